/** The dated folder of raw files and entries: reads, adds, never rewrites history. */
package evenblade.keep.job;
