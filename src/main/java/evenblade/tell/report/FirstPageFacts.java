package evenblade.tell.report;

import evenblade.judge.findings.Finding;
import evenblade.keep.job.Particulars;
import java.util.List;

/**
 * What the first page rests on beside runs and comparisons.
 *
 * @param particulars whose machine it is and who worked on it
 * @param findings heaviest first
 */
public record FirstPageFacts(Particulars particulars, List<Finding> findings) {
    /** Nothing said and nothing found. */
    public static final FirstPageFacts NONE = new FirstPageFacts(Particulars.NONE, List.of());

    public FirstPageFacts {
        findings = List.copyOf(findings);
    }
}
