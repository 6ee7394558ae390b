/** Carries sound as blocks of samples from a file or a live input to whoever listens. */
package evenblade.input.audio;
