package evenblade.app;

import evenblade.app.JudgeTracking.TrackView;
import evenblade.chart.Picture;
import evenblade.findings.Findings;
import evenblade.report.AnswerPart;
import evenblade.report.Figure;
import evenblade.report.FindingPart;
import evenblade.tracking.TrackingAnalysis;
import evenblade.units.LengthUnit;
import java.util.ArrayList;
import java.util.List;

/**
 * A job's findings in the words of its report.
 *
 * @param findings heaviest first; none where nothing was measured
 * @param answers what tip marks say together, and tip marks and runs
 */
record FindingsForReport(List<FindingPart> findings, List<AnswerPart> answers) {
    private static final int WIDTH_PX = 1000;
    private static final int HEIGHT_PX = 480;

    /** Tall enough for the circles of a polar picture. */
    private static final int TALL_PX = 620;

    FindingsForReport {
        findings = List.copyOf(findings);
        answers = List.copyOf(answers);
    }

    static FindingsForReport of(JobRuns runs) {
        EvidenceOfJob.Loaded loaded = EvidenceOfJob.of(runs, Progress.SILENT);
        List<AnswerPart> answers = new ArrayList<>();
        if (!JudgeTracking.sessions(runs.record()).isEmpty()) {
            answers.add(tracking(JudgeTracking.of(runs.record())));
        }
        loaded.tie()
                .ifPresent(tie -> answers.add(new AnswerPart(
                        "Shaking and track",
                        TieWords.sentences(tie),
                        DrawTie.answer(tie, runs.record().invented()).stream()
                                .map(picture -> wide(picture, TALL_PX))
                                .toList())));
        return new FindingsForReport(
                Findings.weigh(loaded.evidence()).list().stream()
                        .map(FindingPart::of)
                        .toList(),
                answers);
    }

    /** Blades against hub positions: one answer for each stretch without a change. */
    private static AnswerPart tracking(TrackView view) {
        List<String> sentences = new ArrayList<>();
        List<Figure> figures = new ArrayList<>();
        for (TrackingAnalysis spell : view.spells()) {
            int sessions = spell.sessions().size();
            sentences.add((view.spells().size() == 1
                            ? ""
                            : (spell == view.now() ? "Since the last change, " : "Before a change, ")
                                    + sessions
                                    + (sessions == 1 ? " session: " : " sessions: "))
                    + spell.verdict().text());
            DrawTracking.deviations(view, spell, LengthUnit.MILLIMETRE)
                    .map(picture -> wide(picture, HEIGHT_PX))
                    .ifPresent(figures::add);
        }
        view.runOutTest().ifPresent(test -> sentences.add(test.text()));
        TrackingAnalysis now = view.now();
        sentences.add("Layout to keep, of those that can be predicted: "
                + now.bestLayout().layout().text() + ", spread "
                + Figures.fixed(now.bestLayout().predictedSpread().valueMm(), 2) + " mm ("
                + Figures.fixed(now.bestLayout().predictedSpread().lowMm(), 2) + " to "
                + Figures.fixed(now.bestLayout().predictedSpread().highMm(), 2) + "). To learn more, mark again with "
                + now.nextLayout().layout().text() + ".");
        return new AnswerPart("Blades against hub positions", sentences, figures);
    }

    private static Figure wide(Picture picture, int heightPx) {
        return Figure.wide(picture.title(), picture.png(WIDTH_PX, heightPx));
    }
}
