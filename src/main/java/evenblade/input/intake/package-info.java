/** Turns a sound file, the sound of a film or a CSV file into a recording and says all it had to assume. */
package evenblade.input.intake;
