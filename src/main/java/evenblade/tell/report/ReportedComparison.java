package evenblade.tell.report;

import evenblade.judge.comparison.RunComparison;
import java.util.List;

/**
 * Two runs of the job held against each other.
 *
 * @param title which pair this is
 * @param between what was changed between them
 * @param outcome what came of it
 * @param figures pictures
 * @param tables whether the figures are to be listed beside the sentences
 */
public record ReportedComparison(
        String title, List<String> between, RunComparison outcome, List<ReportFigure> figures, boolean tables) {
    public ReportedComparison {
        between = List.copyOf(between);
        figures = List.copyOf(figures);
    }
}
