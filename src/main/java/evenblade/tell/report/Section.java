package evenblade.tell.report;

import evenblade.tell.document.Document;
import evenblade.tell.document.Html;
import evenblade.tell.document.PictureSlot;
import java.util.List;
import java.util.Map;

/**
 * A part of a report: one answer, with the pictures that go into it.
 *
 * @param document the answer
 * @param figures pictures for its slots; a slot without one stays empty
 */
public record Section(Document document, Map<PictureSlot, List<ReportFigure>> figures) {
    public Section {
        figures = Map.copyOf(figures);
    }

    /** As a part of a page. */
    public String html() {
        return Html.of(document, slot -> pictures(figures.getOrDefault(slot, List.of())));
    }

    private static String pictures(List<ReportFigure> figures) {
        StringBuilder html = new StringBuilder();
        figures.forEach(figure -> html.append("<div class=\"")
                .append(figure.wide() ? "wide" : "half")
                .append("\">")
                .append(figure.html())
                .append("</div>\n"));
        return html.toString();
    }
}
