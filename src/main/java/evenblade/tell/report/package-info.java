/** The record to hand over. One template makes the page for the browser and the sheets of paper. */
package evenblade.tell.report;
