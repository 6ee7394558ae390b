package evenblade.app;

import evenblade.findings.Findings;
import evenblade.report.FindingPart;
import java.util.List;

/** A job's findings in the words of its report. */
final class FindingsForReport {
    private FindingsForReport() {}

    /** The findings, heaviest first; none where nothing was measured. */
    static List<FindingPart> of(JobRuns runs) {
        return Findings.weigh(EvidenceOfJob.of(runs, Progress.SILENT).evidence()).list().stream()
                .map(FindingPart::of)
                .toList();
    }
}
