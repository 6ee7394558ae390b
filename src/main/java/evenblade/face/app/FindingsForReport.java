package evenblade.face.app;

import evenblade.judge.findings.Confidence;
import evenblade.judge.findings.Finding;
import evenblade.judge.findings.Findings;
import evenblade.judge.tracking.StaticSide;
import evenblade.keep.job.Kind;
import evenblade.tell.chart.Picture;
import evenblade.tell.document.Face;
import evenblade.tell.document.FigureFormat;
import evenblade.tell.document.Phrases;
import evenblade.tell.document.PictureSlot;
import evenblade.tell.document.PictureSlot.Shows;
import evenblade.tell.document.TieDocument;
import evenblade.tell.document.TrackingDocument;
import evenblade.tell.report.FindingPart;
import evenblade.tell.report.ReportFigure;
import evenblade.tell.report.Section;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A job's findings in the words of its report.
 *
 * @param weighed what was put right first, then what is open, then hints; none where nothing was measured
 * @param findings the same in words
 * @param checks static readings; empty where there are none
 * @param answers what tip marks say together, and tip marks and runs
 */
record FindingsForReport(
        List<Finding> weighed, List<FindingPart> findings, List<Section> checks, List<Section> answers) {
    private static final int WIDTH_PX = 1000; // a page's width at some 150 pixels an inch
    private static final int HEIGHT_PX = 480; // about half the width

    /** Tall enough for the circles of a polar picture. */
    private static final int TALL_PX = 620;

    FindingsForReport {
        weighed = List.copyOf(weighed);
        findings = List.copyOf(findings);
        checks = List.copyOf(checks);
        answers = List.copyOf(answers);
    }

    static FindingsForReport of(JobRuns runs, FigureFormat lengths) {
        EvidenceOfJob.Loaded loaded = EvidenceOfJob.of(runs, Progress.SILENT);
        Phrases phrases = new Phrases(Face.PAPER, lengths);
        List<Section> answers = new ArrayList<>();
        StaticSide side = JudgeTracking.of(runs.record());
        boolean read = !side.sessions().isEmpty()
                || !side.runOuts().isEmpty()
                || !side.pitches().isEmpty();
        loaded.tie().ifPresent(tie -> {
            List<ReportFigure> figures = DrawTie.draw(tie, runs.record().invented()).stream()
                    .map(picture -> wide(picture, TALL_PX))
                    .toList();
            answers.add(new Section(TieDocument.of(tie, lengths), Map.of(PictureSlot.of(Shows.TIE), figures)));
        });
        List<Finding> weighed = Findings.weigh(loaded.evidence()).list().stream()
                .sorted(Comparator.comparingInt(FindingsForReport::place))
                .toList();
        if (!runs.record().standing(Kind.BALANCE).isEmpty()) {
            answers.add(balance(runs, lengths));
        }
        return new FindingsForReport(
                weighed,
                weighed.stream()
                        .map(finding -> FindingPart.of(finding, phrases))
                        .toList(),
                read ? List.of(statics(side, lengths)) : List.of(),
                answers);
    }

    /** A reader wants to know first what was cured; what is left comes behind it. */
    private static int place(Finding finding) {
        boolean leaning = finding.sureness().share() >= Confidence.LEANING;
        return !leaning ? 2 : finding.open() ? 1 : 0;
    }

    /** The correction weight, or why there is none; with the runs, the hub and the cautions. */
    private static Section balance(JobRuns runs, FigureFormat lengths) {
        JobBalance job = BalanceJob.balance(runs, OptionalDouble.empty(), Optional.empty());
        List<ReportFigure> figures = DrawBalance.draw(job, lengths).values().stream()
                .map(picture -> wide(picture, TALL_PX))
                .toList();
        return new Section(BalanceSheet.of(job, lengths).document(), Map.of(PictureSlot.of(Shows.BALANCE), figures));
    }

    private static Section statics(StaticSide side, FigureFormat lengths) {
        Map<PictureSlot, List<ReportFigure>> figures = new HashMap<>();
        for (int i = 0; i < side.sessions().size(); i++) {
            Picture tips = DrawTracking.tips(side, side.sessions().get(i), lengths.unit());
            figures.put(new PictureSlot(Shows.TIPS, i), List.of(wide(tips, HEIGHT_PX)));
        }
        for (int i = 0; i < side.spells().size(); i++) {
            PictureSlot slot = new PictureSlot(Shows.DEVIATIONS, i);
            DrawTracking.deviations(side, side.spells().get(i), lengths.unit())
                    .ifPresent(picture -> figures.put(slot, List.of(wide(picture, HEIGHT_PX))));
        }
        return new Section(TrackingDocument.of(side, new Phrases(Face.PAPER, lengths)), figures);
    }

    private static ReportFigure wide(Picture picture, int heightPx) {
        return ReportFigure.wide(picture.title(), picture.png(WIDTH_PX, heightPx));
    }
}
