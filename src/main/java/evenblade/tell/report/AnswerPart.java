package evenblade.tell.report;

import java.util.List;

/**
 * What several measurements say together.
 *
 * @param title what was asked
 * @param sentences the answer, then what it rests on
 * @param figures pictures of it; may be empty
 */
public record AnswerPart(String title, List<String> sentences, List<ReportFigure> figures) {
    public AnswerPart {
        sentences = List.copyOf(sentences);
        figures = List.copyOf(figures);
    }
}
