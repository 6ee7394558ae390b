package evenblade.face.app;

import evenblade.base.units.Length;
import evenblade.face.app.JudgeTracking.TrackView;
import evenblade.judge.findings.Findings;
import evenblade.judge.tracking.BestLayout;
import evenblade.judge.tracking.Deviation;
import evenblade.judge.tracking.TrackingAnalysis;
import evenblade.keep.job.Kind;
import evenblade.tell.chart.Picture;
import evenblade.tell.document.Face;
import evenblade.tell.document.FigureFormat;
import evenblade.tell.document.Phrases;
import evenblade.tell.report.AnswerPart;
import evenblade.tell.report.FindingPart;
import evenblade.tell.report.Lengths;
import evenblade.tell.report.ReportFigure;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;

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

    static FindingsForReport of(JobRuns runs, Lengths lengths) {
        Phrases phrases = new Phrases(Face.PAPER, new FigureFormat(lengths.units()));
        EvidenceOfJob.Loaded loaded = EvidenceOfJob.of(runs, Progress.SILENT);
        List<AnswerPart> answers = new ArrayList<>();
        if (!JudgeTracking.sessions(runs.record()).isEmpty()) {
            answers.add(tracking(JudgeTracking.of(runs.record()), lengths));
        }
        loaded.tie()
                .ifPresent(tie -> answers.add(new AnswerPart(
                        "Shaking and track",
                        TieWords.sentences(tie),
                        DrawTie.answer(tie, runs.record().invented()).stream()
                                .map(picture -> wide(picture, TALL_PX))
                                .toList())));
        if (!runs.record().standing(Kind.BALANCE).isEmpty()) {
            answers.add(balance(runs));
        }
        return new FindingsForReport(
                Findings.weigh(loaded.evidence()).list().stream()
                        .map(finding -> FindingPart.of(finding, phrases))
                        .toList(),
                answers);
    }

    /** The correction weight, or why there is none; with the runs, the hub and the cautions. */
    private static AnswerPart balance(JobRuns runs) {
        JobBalance job = BalanceJob.answer(runs, OptionalDouble.empty(), Optional.empty());
        BalanceSheet sheet = BalanceSheet.of(job);
        return new AnswerPart(
                sheet.heading(),
                sheet.sentences(),
                DrawBalance.answer(job).values().stream()
                        .map(picture -> wide(picture, TALL_PX))
                        .toList());
    }

    /** Blades against hub positions: one answer for each stretch without a change. */
    private static AnswerPart tracking(TrackView view, Lengths lengths) {
        Phrases phrases = new Phrases(Face.PAPER, new FigureFormat(lengths.units()));
        List<String> sentences = new ArrayList<>();
        List<ReportFigure> figures = new ArrayList<>();
        for (TrackingAnalysis spell : view.spells()) {
            int sessions = spell.sessions().size();
            sentences.add((view.spells().size() == 1
                            ? ""
                            : (spell == view.now() ? "Since the last change, " : "Before a change, ")
                                    + sessions
                                    + (sessions == 1 ? " session: " : " sessions: "))
                    + phrases.text(spell.verdict().fact()));
            DrawTracking.deviations(view, spell, lengths.units())
                    .map(picture -> wide(picture, HEIGHT_PX))
                    .ifPresent(figures::add);
        }
        view.runOutTest().ifPresent(test -> sentences.add(phrases.text(test.fact())));
        TrackingAnalysis now = view.now();
        sentences.add(open(now));
        sentences.add(keep(now.bestLayout(), lengths));
        sentences.add("To learn more, mark again with "
                + now.nextLayout().layout().text() + ": the least known difference would then be good to ± "
                + lengths.both(Length.ofMillimetres(now.nextLayout().worstStandardErrorMm()))
                + " (one standard error).");
        return new AnswerPart("Blades against hub positions", sentences, figures);
    }

    private static String open(TrackingAnalysis now) {
        String names = Stream.concat(open("blade ", now.blades()), open("position ", now.positions()))
                .collect(Collectors.joining(", "));
        if (names.isEmpty()) {
            return now.separable()
                    ? "Every blade and every hub position is told apart from the others."
                    : "Each is told against the mean of all, but not every difference between two of them.";
        }
        return "Can't be told apart yet: " + names
                + ". What belongs to the blade and what to its place is one figure so far.";
    }

    private static Stream<String> open(String what, List<Deviation> deviations) {
        return deviations.stream()
                .filter(deviation -> deviation.estimate().isEmpty())
                .map(deviation -> what + deviation.name());
    }

    private static String keep(BestLayout best, Lengths lengths) {
        return "Layout to keep, of those that can be predicted: "
                + best.layout().text() + ", predicted spread "
                + lengths.both(Length.ofMillimetres(best.predictedSpread().valueMm())) + ", 95 %: "
                + lengths.first(Length.ofMillimetres(best.predictedSpread().lowMm())) + " to "
                + lengths.first(Length.ofMillimetres(best.predictedSpread().highMm()))
                + (best.blades() == 0
                        ? ", which is how it stands."
                        : "; as it stands "
                                + lengths.both(
                                        Length.ofMillimetres(best.spreadNow().valueMm()))
                                + ".");
    }

    private static ReportFigure wide(Picture picture, int heightPx) {
        return ReportFigure.wide(picture.title(), picture.png(WIDTH_PX, heightPx));
    }
}
