/** Where the program begins: opens the desktop where nothing was asked and there is a display, else the command line. */
package evenblade.face.start;
