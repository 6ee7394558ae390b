/** Windows, FFT, averaged spectrum, decimation: for looking. */
package evenblade.measure.signal;
