package evenblade.tell.report;

import evenblade.base.fact.Warning;
import evenblade.base.units.LengthUnit;
import evenblade.keep.job.JobRecord;
import java.time.OffsetDateTime;
import java.util.List;

/**
 * What a report is made from.
 *
 * @param record the job
 * @param made when the report is made
 * @param version of the program
 * @param fileWarnings what a look at every byte of the stored files showed
 * @param runs the standing runs, in order of time
 * @param comparisons first against last, then one after the other
 * @param trend pictures over all runs
 * @param turn pictures of one turn of the propeller
 * @param photos that can be shown
 * @param units which unit of length comes first
 * @param checks static readings with their limits; may be empty
 * @param answers what several measurements say together; may be empty
 * @param firstPage what the first page rests on beside runs and comparisons
 */
public record ReportInput(
        JobRecord record,
        OffsetDateTime made,
        String version,
        List<Warning> fileWarnings,
        List<ReportedRun> runs,
        List<ReportedComparison> comparisons,
        List<ReportFigure> trend,
        List<ReportFigure> turn,
        List<ReportContent.Photo> photos,
        LengthUnit units,
        List<Section> checks,
        List<Section> answers,
        FirstPageFacts firstPage) {
    public ReportInput {
        fileWarnings = List.copyOf(fileWarnings);
        runs = List.copyOf(runs);
        comparisons = List.copyOf(comparisons);
        trend = List.copyOf(trend);
        turn = List.copyOf(turn);
        photos = List.copyOf(photos);
        checks = List.copyOf(checks);
        answers = List.copyOf(answers);
    }

    /** Its content in words, ready to be set. */
    public ReportContent content() {
        return Composition.of(this);
    }
}
