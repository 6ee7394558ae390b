package evenblade.tell.report;

import java.util.List;

/**
 * Two runs held against each other.
 *
 * @param title which
 * @param between what was changed between them
 * @param sentences the outcome in words
 * @param tables one per pair of dwells
 * @param refusals why they can't be compared; empty where they are
 * @param cautions what to keep in mind
 * @param figures pictures
 */
public record ComparisonPart(
        String title,
        List<String> between,
        List<String> sentences,
        List<Table> tables,
        List<String> refusals,
        List<String> cautions,
        List<ReportFigure> figures) {
    public ComparisonPart {
        between = List.copyOf(between);
        sentences = List.copyOf(sentences);
        tables = List.copyOf(tables);
        refusals = List.copyOf(refusals);
        cautions = List.copyOf(cautions);
        figures = List.copyOf(figures);
    }

    /**
     * The changes at one speed.
     *
     * @param title speed, channel and unit
     * @param rows one per figure
     * @param rest figures that aren't listed, in a sentence; may be empty
     */
    public record Table(String title, List<Row> rows, String rest) {
        public Table {
            rows = List.copyOf(rows);
        }
    }

    /**
     * One figure.
     *
     * @param name of the line
     * @param before with its error
     * @param after with its error
     * @param change with its interval
     * @param verdict in words
     * @param clear whether a change is shown
     */
    public record Row(String name, String before, String after, String change, String verdict, boolean clear) {}

    /** Whether it is known what was changed between them. */
    public boolean changed() {
        return !between.isEmpty();
    }

    /** Whether they can't be compared. */
    public boolean refused() {
        return !refusals.isEmpty();
    }
}
