/** What was wrong with an input (file, line, found, expected, cure), and the coded warnings that travel with a result. */
package evenblade.base.problem;
