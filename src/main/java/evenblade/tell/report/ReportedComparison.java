package evenblade.tell.report;

import evenblade.judge.comparison.RunComparison;
import evenblade.tell.document.ComparisonDocument;
import evenblade.tell.document.ComparisonDocument.Extent;
import evenblade.tell.document.Document;
import evenblade.tell.document.Phrases;
import evenblade.tell.document.PictureSlot;
import java.util.List;
import java.util.Map;

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

    /** As a part of a report. */
    Section section(Phrases phrases) {
        Document text = Document.begin()
                .subject(title)
                .addAll(ComparisonDocument.of(
                        outcome, between, List.of(), tables ? Extent.MAIN_PAIR : Extent.SENTENCES, phrases))
                .done();
        return new Section(text, Map.of(PictureSlot.of(PictureSlot.Shows.COMPARISON), figures));
    }
}
