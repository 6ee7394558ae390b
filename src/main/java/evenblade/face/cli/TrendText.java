package evenblade.face.cli;

import evenblade.face.app.ChangeWords;
import evenblade.face.app.ShowTrend;
import evenblade.judge.comparison.ComparedValue;
import evenblade.judge.comparison.Figure;
import evenblade.judge.comparison.Trend;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** A job's trend as text for a terminal of 80 columns: the first channel, the figures that matter most. */
final class TrendText {
    /** All others are in the JSON form. */
    private static final Set<String> SHOWN = Set.of(
            "propeller 1×",
            "blade pass",
            "unevenness",
            "crank ½×",
            "crank 1×",
            "motor 1×",
            "firing",
            "propeller 1× / blade pass");

    private static final int LONGEST_NAME = 18;

    private final ShowTrend.Answer answer;
    private final List<String> lines = new ArrayList<>();

    private TrendText(ShowTrend.Answer answer) {
        this.answer = answer;
    }

    static List<String> lines(ShowTrend.Answer answer) {
        TrendText text = new TrendText(answer);
        text.add(answer.name());
        if (answer.invented()) {
            text.add("INVENTED FOR PRACTICE: nothing in this job was measured.");
        }
        if (answer.channels().isEmpty()) {
            text.add("No run with a dwell at a confirmed speed yet: nothing to follow.");
        } else {
            text.trend(answer.channels().get(0));
        }
        text.lines.addAll(WarningText.marked(answer.warnings()));
        return text.lines;
    }

    private void trend(Trend trend) {
        trend.runs().stream().filter(run -> !run.leftOut().isEmpty()).forEach(run -> run.leftOut()
                .forEach(reason -> item("run '" + run.name() + "' is left out: " + WarningText.of(reason.fact()))));
        for (Trend.SpeedGroup speed : trend.speeds()) {
            for (Trend.FigureLine line : speed.lines()) {
                if (SHOWN.contains(line.figure().name()) && everKnown(line)) {
                    figure(trend, speed, line);
                }
            }
            if (!speed.without().isEmpty()) {
                item(String.format(
                        Locale.ROOT,
                        "no dwell at %.0f engine rpm: %s",
                        speed.engineRpm(),
                        String.join(", ", speed.without())));
            }
        }
        add("");
        if (answer.channels().size() > 1) {
            item("channel '" + trend.channel() + "' shakes most at propeller 1× and is shown; --json has all "
                    + answer.channels().size());
        }
        item("95 %: the interval of one run, with the scatter from run to run in it; in scatter: no change shown.");
        trend.warnings().forEach(w -> item(WarningText.of(w)));
    }

    private static boolean everKnown(Trend.FigureLine line) {
        return line.points().stream().anyMatch(p -> p.value() instanceof ComparedValue.Known);
    }

    private void figure(Trend trend, Trend.SpeedGroup speed, Trend.FigureLine line) {
        boolean amplitude = line.figure().kind() == Figure.Kind.AMPLITUDE;
        add("");
        lines.addAll(LineWrapper.lines(
                "",
                "  ",
                String.format(
                        Locale.ROOT,
                        "%s at %.0f engine rpm, channel '%s'%s",
                        line.figure().name(),
                        speed.engineRpm(),
                        trend.channel(),
                        amplitude ? ", " + trend.unit().display() + " peak" : "")));
        TextTable table = new TextTable("lrlrr");
        table.row("run", "", "95 %", "since last", "since first");
        List<List<String>> changes = new ArrayList<>();
        for (Trend.Point point : line.points()) {
            changes.add(changesSince(trend, line, point));
            boolean known = point.value() instanceof ComparedValue.Known;
            table.row(
                    shortened(point.run()),
                    ChangeWords.value(point.value()),
                    known ? figures(point.ciLow()) + " to " + figures(point.ciHigh()) : "",
                    point.sinceLast().map(ChangeWords::step).orElse(""),
                    point.sinceFirst().map(ChangeWords::step).orElse(""));
        }
        List<String> rows = table.lines();
        add("  " + rows.get(0));
        for (int i = 0; i < changes.size(); i++) {
            changes.get(i).forEach(change -> lines.addAll(LineWrapper.lines("  > ", "    ", change)));
            add("  " + rows.get(i + 1));
        }
    }

    /** What was changed between the point before and this one, also where runs between have no such dwell. */
    private static List<String> changesSince(Trend trend, Trend.FigureLine line, Trend.Point point) {
        List<String> changes = new ArrayList<>();
        for (Trend.RunEntry run : trend.runs()) {
            changes.addAll(run.changesBefore());
            if (run.name().equals(point.run())) {
                break;
            }
            if (line.points().stream().anyMatch(p -> p.run().equals(run.name()))) {
                changes.clear();
            }
        }
        return changes;
    }

    /** Three figures. */
    private static String figures(double value) {
        return AmplitudeText.fixed(value, AmplitudeText.decimals(value / 10));
    }

    private static String shortened(String name) {
        return name.length() <= LONGEST_NAME ? name : name.substring(0, LONGEST_NAME - 1) + "…";
    }

    private void item(String text) {
        lines.addAll(LineWrapper.lines("- ", "  ", text));
    }

    private void add(String line) {
        lines.add(line);
    }
}
