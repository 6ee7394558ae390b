/** Plain mathematics without domain words: least squares with rank, intervals, robust line. */
package evenblade.base.numeric;
