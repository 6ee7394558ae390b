/** What was wrong with an input: file, line, found, expected, cure. */
package evenblade.base.problem;
