/** Propeller speed over time from comb or mark, its error, the dwells; or 'not found'. */
package evenblade.measure.speed;
