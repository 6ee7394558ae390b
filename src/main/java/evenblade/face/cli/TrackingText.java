package evenblade.face.cli;

import evenblade.face.app.JudgeTracking.BladeAngles;
import evenblade.face.app.JudgeTracking.DialReading;
import evenblade.face.app.JudgeTracking.MarkedTips;
import evenblade.face.app.JudgeTracking.TrackView;
import evenblade.judge.tracking.BestLayout;
import evenblade.judge.tracking.Deviation;
import evenblade.judge.tracking.Estimate;
import evenblade.judge.tracking.HubPattern;
import evenblade.judge.tracking.LimitCheck;
import evenblade.judge.tracking.TrackingAnalysis;
import evenblade.judge.tracking.TrackingSession;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;

/** The static side of a job as text for a terminal of 80 columns. */
final class TrackingText {
    private static final DateTimeFormatter MINUTE =
            DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT).withZone(ZoneOffset.UTC);
    /** Blades side by side that still fit beside time and spread. */
    private static final int MOST_ACROSS = 4;

    private final TrackView view;
    private final List<String> lines = new ArrayList<>();

    private TrackingText(TrackView view) {
        this.view = view;
    }

    static List<String> lines(TrackView view) {
        TrackingText text = new TrackingText(view);
        text.heading();
        text.sessions();
        text.earlier();
        text.shares();
        text.verdict();
        text.layouts();
        text.runOut();
        text.pitch();
        text.next();
        return text.lines;
    }

    private void heading() {
        paragraph("", "", view.job());
        if (view.invented()) {
            lines.add("INVENTED FOR PRACTICE: nothing in this job was measured.");
        }
        lines.add("");
    }

    private void sessions() {
        lines.add("Tip marks in mm, blade and mark by hub position (times in UTC)");
        int positions = view.sessions().get(0).session().layout().positions();
        int tables = (positions + MOST_ACROSS - 1) / MOST_ACROSS;
        int across = (positions + tables - 1) / tables;
        for (int from = 0; from < positions; from += across) {
            int to = Math.min(positions, from + across);
            TextTable table = new TextTable("l" + "r".repeat(to - from) + "r");
            List<String> head = new ArrayList<>(List.of("session"));
            for (int p = from + 1; p <= to; p++) {
                head.add("position " + p);
            }
            head.add("spread");
            table.row(head.toArray(String[]::new));
            for (MarkedTips tips : view.sessions()) {
                TrackingSession session = tips.session();
                List<String> row = new ArrayList<>(List.of(MINUTE.format(session.at())));
                for (int p = from; p < to; p++) {
                    row.add(session.layout().at(p + 1)
                            + format(" %6.2f", session.marksMm().get(p)));
                }
                row.add(format("%.2f", session.spreadMm()));
                table.row(row.toArray(String[]::new));
            }
            lines.addAll(table.lines());
        }
        MarkedTips last = view.sessions().get(view.sessions().size() - 1);
        if (last.checks().isEmpty()) {
            paragraph("", "", "No limit for the track is entered: the propeller maker's figure rules.");
        }
        checks("Last session: ", last.checks());
        pattern(last.session());
        lines.add("");
    }

    /** How the marks repeat in a turn. */
    private void pattern(TrackingSession session) {
        HubPattern pattern = HubPattern.of(session.marksMm());
        String twice = pattern.twiceATurn().isPresent()
                ? format(
                        "; twice a turn %.2f mm, which shakes at 2×",
                        pattern.twiceATurn().getAsDouble())
                : "";
        paragraph(
                "Last session: ",
                " ".repeat(14),
                format("the disc tilts by %.2f mm once a turn, which shakes at 1×", pattern.onceATurn()) + twice + ".");
    }

    private void earlier() {
        for (TrackingAnalysis spell : view.spells().subList(0, view.spells().size() - 1)) {
            paragraph(
                    "",
                    "",
                    "Until "
                            + MINUTE.format(spell.sessions()
                                    .get(spell.sessions().size() - 1)
                                    .at()) + ": " + spell.verdict().text());
        }
        if (view.spells().size() > 1) {
            paragraph(
                    "",
                    "",
                    "From " + MINUTE.format(view.now().sessions().get(0).at())
                            + " on the marks don't fit with that any more: what was changed shows. What follows is from "
                            + view.now().sessions().size() + " session(s) since.");
            lines.add("");
        }
    }

    private void shares() {
        TrackingAnalysis now = view.now();
        if (now.blades().stream().allMatch(d -> d.estimate().isEmpty())) {
            return;
        }
        lines.add("Off the mean, in mm, with 95 % interval");
        TextTable table = new TextTable("lrl");
        now.blades().forEach(d -> table.row("blade " + d.name(), value(d), interval(d)));
        now.positions().forEach(d -> table.row("position " + d.name(), value(d), interval(d)));
        lines.addAll(table.lines());
        lines.add("");
    }

    private static String value(Deviation deviation) {
        return deviation.estimate().map(e -> format("%+.2f", e.valueMm())).orElse("?");
    }

    private static String interval(Deviation deviation) {
        return deviation
                .estimate()
                .map(e -> format("%+.2f to %+.2f", e.lowMm(), e.highMm()))
                .orElse("can't be told yet");
    }

    private void verdict() {
        paragraph("", "", view.now().verdict().text());
        view.now().warnings().forEach(w -> paragraph("! ", "  ", WarningText.of(w)));
        view.couple()
                .ifPresent(c -> paragraph(
                        "",
                        "",
                        format(
                                "As marked last, the blades turn a couple of roughly %.1f N·m at the engine's highest"
                                        + " speed (an estimate for the order of magnitude).",
                                c.newtonMetres())));
        lines.add("");
    }

    private void layouts() {
        TrackingAnalysis now = view.now();
        paragraph(
                "To learn more    ",
                " ".repeat(17),
                "mark again with " + now.nextLayout().layout().text()
                        + format(
                                "; the least known difference would then be good to ± %.2f mm (one standard error).",
                                now.nextLayout().worstStandardErrorMm()));
        BestLayout best = now.bestLayout();
        Estimate spread = best.predictedSpread();
        paragraph(
                "Layout to keep   ",
                " ".repeat(17),
                best.layout().text()
                        + format(
                                ": predicted spread %.2f mm (%.2f to %.2f)%s.",
                                spread.valueMm(),
                                spread.lowMm(),
                                spread.highMm(),
                                best.blades() == 0
                                        ? ", as it stands"
                                        : format(
                                                ", against %.2f mm now",
                                                best.spreadNow().valueMm())));
        lines.add("");
    }

    private void runOut() {
        if (view.runOuts().isEmpty()) {
            paragraph(
                    "Flange face      ",
                    " ".repeat(17),
                    "no run-out entered. Read it before the flange is cleared: a small reading at the dial is a large"
                            + " one at the tip.");
            return;
        }
        for (DialReading dial : view.runOuts()) {
            String tip = dial.atTip()
                    .map(length -> format(" is %.2f mm at the tips", length.millimetres()))
                    .orElse("; enter the propeller's diameter to carry it out to the tips");
            paragraph(
                    "Flange face      ",
                    " ".repeat(17),
                    MINUTE.format(dial.reading().at())
                            + format(
                                    ": %.3f mm in all at a radius of %.0f mm%s.",
                                    dial.reading().total().millimetres(),
                                    dial.reading().dialRadius().millimetres(),
                                    tip));
            checks(" ".repeat(17), dial.checks());
        }
        view.runOutTest().ifPresent(test -> paragraph(" ".repeat(17), " ".repeat(17), test.text()));
    }

    private void pitch() {
        for (BladeAngles angles : view.pitches()) {
            StringBuilder text =
                    new StringBuilder(MINUTE.format(angles.readings().at()));
            text.append(format(
                    ": spread %.2f°, mean %.2f°",
                    angles.readings().spreadDeg(), angles.readings().meanDeg()));
            text.append(" from a zero on the ")
                    .append(angles.readings().reference().word());
            angles.readings().station().ifPresent(s -> text.append(format(", at %.0f mm", s.millimetres())));
            SortedMap<String, Double> errors = angles.readings().standardErrorsDeg();
            angles.readings()
                    .deviationsDeg()
                    .forEach((blade, off) -> text.append(format("; %s %+.2f ± %.2f", blade, off, errors.get(blade))));
            paragraph("Pitch            ", " ".repeat(17), text.append('.').toString());
            checks(" ".repeat(17), angles.checks());
        }
        view.thrust()
                .ifPresent(t -> paragraph(
                        " ".repeat(17),
                        " ".repeat(17),
                        format(
                                "As read last, the strongest blade pulls roughly %.0f N more than the weakest at the engine's"
                                        + " highest speed, and a couple of roughly %.1f N·m turns (an estimate for the order"
                                        + " of magnitude, rather too large, with a lift slope of %.1f per radian).",
                                t.thrustNewtons(), t.coupleNewtonMetres(), t.liftSlopePerRadian())));
    }

    private void next() {
        lines.add("");
        paragraph("", "", "How much of the shaking goes with track, once there are runs: evenblade findings DIR");
        lines.addAll(Caution.lines());
    }

    private void checks(String first, List<LimitCheck> checks) {
        checks.forEach(check -> paragraph(first, " ".repeat(first.length()), check.text()));
    }

    private void paragraph(String first, String rest, String text) {
        lines.addAll(LineWrapper.lines(first, rest, text));
    }

    private static String format(String form, Object... values) {
        return String.format(Locale.ROOT, form, values);
    }
}
