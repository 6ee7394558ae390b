package evenblade.tell.report;

/** How much of a job a report shows. */
public enum ReportExtent {
    /** A page for the customer and what a stranger needs to judge it. */
    SHORT,
    /** Everything. */
    FULL
}
