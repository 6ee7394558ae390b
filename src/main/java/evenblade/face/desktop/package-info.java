/** Windows and panels that show what {@code app} answers; no arithmetic. */
package evenblade.face.desktop;
