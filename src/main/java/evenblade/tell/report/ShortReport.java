package evenblade.tell.report;

import java.util.List;

/**
 * The short report: a page for the customer, then what a stranger needs to judge it.
 *
 * @param page the first page
 * @param parts what follows, one after the other
 */
public record ShortReport(FirstPage page, List<Section> parts) {
    public ShortReport {
        parts = List.copyOf(parts);
    }
}
