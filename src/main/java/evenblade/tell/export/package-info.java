/** Measured figures as tables for other programs, units in their first row. */
package evenblade.tell.export;
