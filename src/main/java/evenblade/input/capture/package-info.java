/** Turns a live input into blocks and a raw file, counting what was lost. */
package evenblade.input.capture;
