package evenblade.app;

import evenblade.findings.Findings;
import evenblade.findings.Piece;
import evenblade.job.JobFolder;
import evenblade.report.Finding;
import java.util.List;
import java.util.Locale;

/** A job's findings in the words of its report. */
final class FindingsForReport {
    private FindingsForReport() {}

    /** The findings, heaviest first; none where nothing was measured. Runs analysed before come from the cache. */
    static List<Finding> of(JobFolder folder) {
        return Findings.weigh(EvidenceOfJob.of(folder, Progress.SILENT).evidence()).list().stream()
                .map(FindingsForReport::finding)
                .toList();
    }

    private static Finding finding(evenblade.findings.Finding finding) {
        String gone = finding.goneSince()
                .map(run -> " Put right: no longer seen since '" + run + "'.")
                .orElse("");
        return new Finding(
                finding.statement(),
                finding.speaksFor().stream().map(Piece::text).toList(),
                finding.speaksAgainst().stream().map(Piece::text).toList(),
                finding.next(),
                String.format(
                        Locale.ROOT,
                        "%.0f %%, %s.%s",
                        100 * finding.sureness().share(),
                        finding.sureness().words(),
                        gone));
    }
}
