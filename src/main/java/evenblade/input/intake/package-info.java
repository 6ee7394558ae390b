/** Turns a WAV, AIFF, AU, FLAC or CSV file into a recording and says all it had to assume. */
package evenblade.input.intake;
