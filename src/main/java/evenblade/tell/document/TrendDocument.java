package evenblade.tell.document;

import evenblade.judge.comparison.ComparedValue;
import evenblade.judge.comparison.Figure;
import evenblade.judge.comparison.Trend;
import evenblade.machine.installation.OrderLine;
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
                    .filter(line -> matters(line.figure()) && everKnown(line))
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
                    .forEach(reason -> text.say(
                            Tone.ITEM, "Run '" + run.name() + "' is left out: " + phrases.text(reason.fact())));
        }
    }

    private static boolean matters(Figure figure) {
        return figure.tellsMost()
                || figure.kind() == Figure.Kind.AMPLITUDE
                        && figure.line().filter(TrendDocument::ofEngine).isPresent();
    }

    private static boolean ofEngine(OrderLine line) {
        boolean crank = line.role() == OrderLine.Role.CRANK || line.role() == OrderLine.Role.HALF_CRANK;
        return line.firing() || crank && line.first();
    }

    private static boolean everKnown(Trend.FigureLine line) {
        return line.points().stream().anyMatch(p -> p.value() instanceof ComparedValue.Known);
    }

    private void figure(Trend.SpeedGroup speed, Trend.FigureLine line) {
        String unit = ChangeWords.unit(line.figure(), trend.unit());
        Document.TableBuilder table = text.table(FigureFormat.capital(
                                line.figure().name()) + " at "
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
