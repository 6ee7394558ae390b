package evenblade.tell.report;

import evenblade.judge.comparison.Basis;
import evenblade.judge.comparison.ComparedValue;
import evenblade.judge.comparison.Figure.Kind;
import evenblade.judge.comparison.MeasuredRun;
import evenblade.judge.comparison.RunComparison;
import evenblade.judge.comparison.Trend;
import evenblade.judge.comparison.Trend.FigureLine;
import evenblade.judge.comparison.Trend.SpeedGroup;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.OrderReading;
import evenblade.tell.chart.AmplitudeAgainstRpmPicture;
import evenblade.tell.chart.Caption;
import evenblade.tell.chart.Picture;
import evenblade.tell.chart.PlottedEstimate;
import evenblade.tell.chart.PlottedEstimate.PlacedEstimate;
import evenblade.tell.chart.TrendPicture;
import evenblade.tell.document.FigureFormat;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/** Pictures over all runs of a job, and over the speeds of one. */
public final class TrendPictures {
    private TrendPictures() {}

    /**
     * 1×, blade pass and unevenness over the runs, at the speed that most runs have; of several such the one that a
     * comparison beside it speaks of, else the highest.
     */
    public static Optional<Picture> overJob(Trend trend, Optional<RunComparison> beside) {
        ToDoubleFunction<SpeedGroup> fitting = beside.flatMap(ComparisonPictures::mainPair)
                .<ToDoubleFunction<SpeedGroup>>map(
                        pair -> group -> -Math.abs(group.engineRpm() - pair.engineRpmBefore()))
                .orElse(SpeedGroup::engineRpm);
        return trend.speeds().stream()
                .max(Comparator.comparingInt(
                                (SpeedGroup group) -> -group.without().size())
                        .thenComparingDouble(fitting))
                .filter(group -> trend.runs().size() > 1)
                .flatMap(group -> overJob(trend, group));
    }

    private static Optional<Picture> overJob(Trend trend, SpeedGroup group) {
        List<TrendPicture.Band> bands = new ArrayList<>();
        String axis = trend.basis() == Basis.GAIN_FREE
                ? "over blade pass"
                : "amplitude (" + trend.unit().display() + " peak)";
        band(
                        axis,
                        trend,
                        group.lines().stream().filter(TrendPictures::tellsMost).toList())
                .ifPresent(bands::add);
        band(
                        "unevenness (no unit)",
                        trend,
                        group.lines().stream()
                                .filter(line -> line.figure().kind() == Kind.UNEVENNESS)
                                .toList())
                .ifPresent(bands::add);
        if (bands.isEmpty()) {
            return Optional.empty();
        }
        List<TrendPicture.Correction> corrections = new ArrayList<>();
        for (int i = 0; i < trend.runs().size(); i++) {
            for (String change : trend.runs().get(i).changesBefore()) {
                corrections.add(new TrendPicture.Correction(i, change));
            }
        }
        return Optional.of(new TrendPicture(
                Caption.of(
                        Caption.channel(trend.channel()),
                        "engine " + FigureFormat.fixed(group.engineRpm(), 0) + " rpm within 2 %",
                        "bars: 95 % intervals with the scatter from run to run"),
                trend.runs().stream().map(Trend.RunEntry::name).toList(),
                bands,
                corrections));
    }

    private static boolean tellsMost(FigureLine line) {
        return line.figure().kind() != Kind.UNEVENNESS && line.figure().tellsMost();
    }

    private static Optional<TrendPicture.Band> band(String axis, Trend trend, List<FigureLine> lines) {
        List<TrendPicture.Line> drawn = lines.stream()
                .map(line -> new TrendPicture.Line(
                        line.figure().name(),
                        trend.runs().stream()
                                .map(run -> line.points().stream()
                                        .filter(point -> point.run().equals(run.name()))
                                        .findFirst()
                                        .map(TrendPictures::estimate))
                                .toList()))
                .toList();
        return drawn.isEmpty() ? Optional.empty() : Optional.of(new TrendPicture.Band(axis, drawn));
    }

    private static PlottedEstimate estimate(Trend.Point point) {
        boolean known = point.value() instanceof ComparedValue.Known;
        return new PlottedEstimate(known ? point.value().size() : 0, point.ciLow(), point.ciHigh(), known);
    }

    /**
     * How 1× and blade pass go with speed, where a run has several dwells.
     *
     * @param channelName to show, where the run has it; else the one to look at first
     */
    public static Optional<Picture> againstRpm(MeasuredRun run, Optional<String> channelName) {
        if (run.dwells().size() < 2) {
            return Optional.empty();
        }
        ChannelOrders channel = run.channels().stream()
                .filter(each -> channelName.filter(each.channel()::equals).isPresent())
                .findFirst()
                .orElse(run.channels().get(0));
        List<DwellOrders> rising = channel.dwells().stream()
                .sorted(Comparator.comparingDouble(d -> d.dwell().propellerHz()))
                .toList();
        List<AmplitudeAgainstRpmPicture.Line> lines = new ArrayList<>();
        for (OrderReading line : rising.get(0).readings()) {
            if (line.line().propellerOnce() || line.line().bladePass()) {
                lines.add(new AmplitudeAgainstRpmPicture.Line(line.line().name(), points(run, rising, line)));
            }
        }
        lines.removeIf(line -> line.points().isEmpty());
        return lines.isEmpty()
                ? Optional.empty()
                : Optional.of(new AmplitudeAgainstRpmPicture(
                        Caption.of("run " + run.name(), Caption.channel(channel.channel())), channel.unit(), lines));
    }

    private static List<PlacedEstimate> points(MeasuredRun run, List<DwellOrders> rising, OrderReading line) {
        List<PlacedEstimate> points = new ArrayList<>();
        for (DwellOrders dwell : rising) {
            dwell.readings().stream()
                    .filter(reading -> reading.line().equals(line.line()))
                    .flatMap(reading -> ComparedValue.of(reading.level()).stream())
                    .findFirst()
                    .ifPresent(value -> points.add(
                            new PlacedEstimate(run.engineRpm(dwell.dwell()), ComparisonPictures.estimate(value))));
        }
        return points;
    }
}
