/** Turns a live input into blocks and a raw file that is whole at any moment, counting what was lost. */
package evenblade.capture;
