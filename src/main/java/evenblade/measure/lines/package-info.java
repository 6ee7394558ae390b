/** Steady lines of any recording: frequency, amplitude and its error, with or without a known speed. */
package evenblade.measure.lines;
