package evenblade.face.app;

import evenblade.judge.balance.JobBalance;
import evenblade.judge.findings.Finding;
import evenblade.judge.findings.Findings;
import evenblade.judge.tracking.StaticSide;
import evenblade.keep.job.Kind;
import evenblade.tell.chart.Picture;
import evenblade.tell.document.BalanceDocument;
import evenblade.tell.document.Face;
import evenblade.tell.document.FigureFormat;
import evenblade.tell.document.Phrases;
import evenblade.tell.document.PictureSlot;
import evenblade.tell.document.PictureSlot.Shows;
import evenblade.tell.document.TieDocument;
import evenblade.tell.document.TrackingDocument;
import evenblade.tell.report.ReportFigure;
import evenblade.tell.report.Section;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A job's findings for its report.
 *
 * @param findings heaviest first; none where nothing was measured
 * @param checks static readings; empty where there are none
 * @param answers what tip marks say together, and tip marks and runs
 */
record FindingsForReport(List<Finding> findings, List<Section> checks, List<Section> answers) {
    private static final int WIDTH_PX = 1000; // a page's width at some 150 pixels an inch
    private static final int HEIGHT_PX = 480; // about half the width

    /** Tall enough for the circles of a polar picture. */
    private static final int TALL_PX = 620;

    FindingsForReport {
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
            List<ReportFigure> figures = DrawTie.draw(tie, runs.record().invented(), lengths.unit()).stream()
                    .map(picture -> wide(picture, TALL_PX))
                    .toList();
            answers.add(new Section(TieDocument.of(tie, phrases), Map.of(PictureSlot.of(Shows.TIE), figures)));
        });
        if (!runs.record().standing(Kind.BALANCE).isEmpty()) {
            answers.add(balance(runs, phrases));
        }
        return new FindingsForReport(
                Findings.weigh(loaded.evidence()).list(), read ? List.of(statics(side, lengths)) : List.of(), answers);
    }

    /** The correction weight, or why there is none; with the runs, the hub and the cautions. */
    private static Section balance(JobRuns runs, Phrases phrases) {
        JobBalance job = BalanceJob.balance(runs, OptionalDouble.empty(), Optional.empty());
        List<ReportFigure> figures = DrawBalance.draw(job, phrases.figures()).values().stream()
                .map(picture -> wide(picture, TALL_PX))
                .toList();
        return new Section(BalanceDocument.of(job, phrases), Map.of(PictureSlot.of(Shows.BALANCE), figures));
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
        return ReportFigure.drawn(picture, WIDTH_PX, heightPx);
    }
}
