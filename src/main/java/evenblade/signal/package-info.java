/** Windows, FFT, averaged spectrum, decimation: for looking. */
package evenblade.signal;
