package evenblade.tell.report;

import java.util.List;

/**
 * One session of static readings.
 *
 * @param title what was read, and when
 * @param columns names of the hub positions or whatever was read
 * @param rows each with as many cells as there are columns
 * @param sentences what it comes to, against each limit
 * @param figures pictures
 */
public record StaticPart(
        String title, List<String> columns, List<Row> rows, List<String> sentences, List<ReportFigure> figures) {
    public StaticPart {
        columns = List.copyOf(columns);
        rows = List.copyOf(rows);
        sentences = List.copyOf(sentences);
        figures = List.copyOf(figures);
    }

    /**
     * A line of readings.
     *
     * @param name what was read
     * @param cells one per column
     */
    public record Row(String name, List<String> cells) {
        public Row {
            cells = List.copyOf(cells);
        }
    }
}
