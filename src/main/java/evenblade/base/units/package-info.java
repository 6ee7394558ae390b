/** Quantities with their units, read from and written for people. */
package evenblade.base.units;
