package evenblade.tell.document;

import evenblade.judge.comparison.ComparedValue;
import evenblade.judge.comparison.Figure;
import evenblade.judge.comparison.Trend;
import evenblade.machine.installation.Shaft;
import evenblade.tell.document.Block.Tone;
import evenblade.tell.document.Block.Weight;
import java.util.ArrayList;
import java.util.List;

/** How the figures of one channel went over all runs of a job, with what was changed between them. */
public final class TrendDocument {
    private final Trend trend;
    private final Phrases phrases;
    private final Document.Builder text = Document.begin();

    private TrendDocument(Trend trend, Phrases phrases) {
        this.phrases = phrases;
        this.trend = trend;
    }

    /** The figures that matter most; all others are in the JSON form and the table for other programs. */
    public static Document of(Trend trend, Phrases phrases) {
        TrendDocument document = new TrendDocument(trend, phrases);
        document.runs();
        for (Trend.SpeedGroup speed : trend.speeds()) {
            speed.lines().stream()
                    .filter(line -> matters(line.figure(), speed) && everKnown(line))
                    .forEach(line -> document.figure(speed, line));
            if (!speed.without().isEmpty()) {
                document.text.say(
                        Tone.NOTE,
                        "No dwell at " + FigureFormat.rpm(speed.engineRpm()) + " engine rpm: "
                                + String.join(", ", speed.without()) + ".");
            }
        }
        document.text.say(
                Tone.ITEM,
                "95 %: the interval of one run, with the scatter from run to run in it; in scatter: no change shown.");
        document.text.warnings(Tone.ITEM, phrases, trend.warnings());
        return document.text.done();
    }

    private void runs() {
        for (Trend.RunEntry run : trend.runs()) {
            run.leftOut()
                    .forEach(reason ->
                            text.say(Tone.ITEM, "Run '" + run.name() + "' is left out: " + phrases.text(reason.fact())));
        }
    }

    /** Propeller 1× and blade pass, crank ½× and 1×, firing, unevenness, and the ratio that no gain changes. */
    private static boolean matters(Figure figure, Trend.SpeedGroup speed) {
        if (figure.kind() == Figure.Kind.UNEVENNESS) {
            return true;
        }
        if (figure.kind() == Figure.Kind.TO_BLADE_PASS) {
            return figure.order() == 1;
        }
        boolean propeller = figure.of().filter(Shaft.PROPELLER::equals).isPresent();
        boolean loaded = figure.nature() == Figure.Nature.LOADED;
        return loaded ? lowest(figure, speed) : propeller ? figure.order() == 1 : figure.order() <= 1;
    }

    /** Whether it is the lowest of the orders of its shaft that air or gas makes: blade pass or firing. */
    private static boolean lowest(Figure figure, Trend.SpeedGroup speed) {
        return speed.lines().stream()
                .map(Trend.FigureLine::figure)
                .filter(other -> other.kind() == figure.kind() && other.of().equals(figure.of()))
                .filter(other -> other.nature() == Figure.Nature.LOADED)
                .noneMatch(other -> other.order() < figure.order());
    }

    private static boolean everKnown(Trend.FigureLine line) {
        return line.points().stream().anyMatch(p -> p.value() instanceof ComparedValue.Known);
    }

    private void figure(Trend.SpeedGroup speed, Trend.FigureLine line) {
        String unit = ChangeWords.unit(line.figure(), trend.unit());
        Document.TableBuilder table = text.table(FigureFormat.capital(line.figure().name()) + " at "
                        + FigureFormat.rpm(speed.engineRpm()) + " engine rpm, " + RunDocument.named(trend.channel())
                        + (unit.isEmpty() ? "" : ", " + unit))
                .left("run")
                .point("value")
                .left("95 %")
                .right("since last")
                .right("since first");
        for (Trend.Point point : line.points()) {
            changesSince(line, point).forEach(change -> table.row(Weight.REMARK, "> " + change));
            table.row(
                    point.run(),
                    ChangeWords.value(point.value()),
                    point.value() instanceof ComparedValue.Known
                            ? FigureFormat.range(point.ciLow(), point.ciHigh())
                            : "",
                    point.sinceLast().map(ChangeWords::step).orElse(""),
                    point.sinceFirst().map(ChangeWords::step).orElse(""));
        }
        table.end();
    }

    /** What was changed between the point before and this one, also where runs between have no such dwell. */
    private List<String> changesSince(Trend.FigureLine line, Trend.Point point) {
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
}
