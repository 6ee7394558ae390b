/** Each order in each dwell at the true stamps: interval, detection, what can't be separated. */
package evenblade.measure.orders;
