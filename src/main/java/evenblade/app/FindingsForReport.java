package evenblade.app;

import evenblade.findings.Findings;
import evenblade.job.JobFolder;
import evenblade.report.FindingPart;
import java.util.List;

/** A job's findings in the words of its report. */
final class FindingsForReport {
    private FindingsForReport() {}

    /** The findings, heaviest first; none where nothing was measured. Runs analysed before come from the cache. */
    static List<FindingPart> of(JobFolder folder) {
        return Findings.weigh(EvidenceOfJob.of(folder, Progress.SILENT).evidence()).list().stream()
                .map(FindingPart::of)
                .toList();
    }
}
