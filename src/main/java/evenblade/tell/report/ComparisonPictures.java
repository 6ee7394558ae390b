package evenblade.tell.report;

import evenblade.base.units.SignalUnit;
import evenblade.judge.comparison.Basis;
import evenblade.judge.comparison.Change;
import evenblade.judge.comparison.ComparedValue;
import evenblade.judge.comparison.DwellComparison;
import evenblade.judge.comparison.Figure;
import evenblade.judge.comparison.RunComparison;
import evenblade.judge.comparison.RunComparison.ChannelComparison;
import evenblade.machine.installation.Shaft;
import evenblade.measure.orders.DwellOrders;
import evenblade.tell.chart.AmplitudeScale;
import evenblade.tell.chart.BeforeAfterBarsPicture;
import evenblade.tell.chart.Caption;
import evenblade.tell.chart.Curve;
import evenblade.tell.chart.MarkKind;
import evenblade.tell.chart.OrderRows;
import evenblade.tell.chart.Picture;
import evenblade.tell.chart.PlottedEstimate;
import evenblade.tell.chart.ShaftSpeeds;
import evenblade.tell.chart.SpectrumCurve;
import evenblade.tell.chart.SpectrumPicture;
import evenblade.tell.document.ChangeWords;
import evenblade.tell.document.ComparisonDocument;
import evenblade.tell.document.FigureFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The pictures of one run held against another. */
public final class ComparisonPictures {
    private ComparisonPictures() {}

    /** The pair of dwells that is shown: the one whose later dwell lasted longest; empty where nothing can be compared. */
    public static Optional<DwellComparison> mainPair(RunComparison outcome) {
        return ComparisonDocument.mainPair(outcome);
    }

    /** Every line of the longest pair of dwells; empty where the runs can't be compared. */
    public static Optional<Picture> bars(RunComparison outcome) {
        return ComparisonDocument.mainPair(outcome)
                .filter(pair -> !pair.changes().isEmpty())
                .map(pair -> bars(outcome, outcome.channels().get(0), pair));
    }

    private static Picture bars(RunComparison outcome, ChannelComparison channel, DwellComparison pair) {
        return new BeforeAfterBarsPicture(new BeforeAfterBarsPicture.Data(
                caption(outcome, channel, pair), outcome.before(), outcome.after(), strips(channel, pair)));
    }

    /** Amplitudes on the axis of their unit; what has no unit on one of its own. */
    static List<BeforeAfterBarsPicture.Strip> strips(ChannelComparison channel, DwellComparison pair) {
        List<BeforeAfterBarsPicture.Row> amplitudes = new ArrayList<>();
        List<BeforeAfterBarsPicture.Row> ratios = new ArrayList<>();
        for (Change change : pair.changes()) {
            boolean amplitude = change.figure().kind() == Figure.Kind.AMPLITUDE && channel.basis() != Basis.GAIN_FREE;
            (amplitude ? amplitudes : ratios).add(row(change));
        }
        List<BeforeAfterBarsPicture.Strip> strips = new ArrayList<>();
        if (!amplitudes.isEmpty()) {
            strips.add(new BeforeAfterBarsPicture.Strip(
                    "amplitude (" + channel.unit().display() + " peak)", amplitudes));
        }
        if (!ratios.isEmpty()) {
            strips.add(new BeforeAfterBarsPicture.Strip("ratio (no unit)", ratios));
        }
        return strips;
    }

    private static BeforeAfterBarsPicture.Row row(Change change) {
        return new BeforeAfterBarsPicture.Row(
                change.figure().name(),
                change.figure().of().filter(Shaft.CRANK::equals).isPresent() ? MarkKind.CRANK : MarkKind.PROPELLER,
                estimate(change.before()),
                estimate(change.after()),
                ChangeWords.verdict(change.verdict()) + ", " + ChangeWords.cell(change));
    }

    private static Caption caption(RunComparison outcome, ChannelComparison channel, DwellComparison pair) {
        return Caption.of(
                outcome.after() + " against " + outcome.before(),
                Caption.channel(channel.channel()),
                "engine " + FigureFormat.fixed(pair.engineRpmBefore(), 0) + " and "
                        + FigureFormat.fixed(pair.engineRpmAfter(), 0) + " rpm",
                "speed confirmed in both");
    }

    /**
     * Both spectra laid over each other.
     *
     * @param later the dwell whose lines are marked
     */
    public static Picture spectra(
            RunComparison outcome, Curve before, Curve after, SignalUnit unit, DwellOrders later, double ratio) {
        return new SpectrumPicture(new SpectrumPicture.Data(
                Caption.of(
                        outcome.after() + " against " + outcome.before(),
                        "engine " + FigureFormat.fixed(later.dwell().propellerRpm() * ratio, 0) + " rpm"),
                List.of(
                        new SpectrumCurve("after: " + outcome.after(), after, SpectrumCurve.Role.AFTER),
                        new SpectrumCurve("before: " + outcome.before(), before, SpectrumCurve.Role.BEFORE)),
                unit,
                OrderRows.lines(later),
                Optional.of(new ShaftSpeeds(later.dwell().propellerHz(), ratio)),
                OrderRows.upToHz(later),
                AmplitudeScale.DECADES));
    }

    /** A value as a picture shows it. */
    static PlottedEstimate estimate(ComparedValue value) {
        if (value instanceof ComparedValue.Known known) {
            double factor = Math.exp(known.reach());
            return new PlottedEstimate(known.value(), known.value() / factor, known.value() * factor, true);
        }
        return new PlottedEstimate(0, 0, value.size(), false);
    }
}
