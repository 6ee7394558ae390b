/** Words in, text or JSON out, exit code. */
package evenblade.face.cli;
