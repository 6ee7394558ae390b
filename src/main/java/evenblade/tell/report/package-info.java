/** Papers to print and hand over: the record, a sheet for the maker, the run card. One template makes the page for the browser and the sheets of paper. */
package evenblade.tell.report;
