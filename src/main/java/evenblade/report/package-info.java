/** The record to hand over: one template, as a page for the browser and as pages of paper. */
package evenblade.report;
