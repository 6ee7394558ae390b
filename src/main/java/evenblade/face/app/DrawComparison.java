package evenblade.face.app;

import evenblade.judge.comparison.ChannelComparison;
import evenblade.judge.comparison.DwellComparison;
import evenblade.judge.comparison.RunComparison;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.RunOrders;
import evenblade.measure.signal.Spectrum;
import evenblade.measure.speed.Dwell;
import evenblade.tell.chart.Curve;
import evenblade.tell.chart.Picture;
import evenblade.tell.document.FigureFormat;
import evenblade.tell.report.ComparisonPictures;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Answers what two compared runs look like beside each other: each channel at each speed that both held. */
public final class DrawComparison {
    private final RunComparison outcome;
    private final AnalysedRecording before;
    private final AnalysedRecording after;

    private DrawComparison(RunComparison outcome, AnalysedRecording before, AnalysedRecording after) {
        this.outcome = outcome;
        this.before = before;
        this.after = after;
    }

    /**
     * One channel at one speed that both runs held.
     *
     * @param channel as compared
     * @param pair the dwells
     */
    public record View(ChannelComparison channel, DwellComparison pair) {
        /** The view in a few words, to choose it by. */
        public String words() {
            return channel.channel() + " at " + FigureFormat.fixed(pair.engineRpmAfter(), 0) + " engine rpm";
        }
    }

    /**
     * What there is to see.
     *
     * @param orders before and after with intervals
     * @param spectra laid over each other
     * @param turn one turn of the propeller before and after; empty where either run has no mean turn
     */
    public record Pictures(Optional<Picture> orders, Optional<Picture> spectra, Optional<Picture> turn) {}

    /**
     * Analyses both runs; empty where they can't be compared.
     *
     * @param progress what it throws ends the work
     * @throws evenblade.base.problem.BadInput where a recording can't be used
     */
    public static Optional<DrawComparison> answer(Path job, CompareRuns.Answer compared, Progress progress) {
        RunComparison outcome = compared.comparison();
        if (!outcome.comparable()) {
            return Optional.empty();
        }
        AnalysedRecording before = AnalyseRun.answer(job, compared.before().id(), half(progress, 0));
        AnalysedRecording after = AnalyseRun.answer(job, compared.after().id(), half(progress, 0.5));
        return Optional.of(new DrawComparison(outcome, before, after));
    }

    private static Progress half(Progress progress, double from) {
        return (share, doing) -> progress.at(from + share / 2, doing);
    }

    /** What can be looked at, in the order of the comparison: the channel that tells most comes first. */
    public List<View> views() {
        List<View> views = new ArrayList<>();
        outcome.channels().forEach(channel -> channel.dwells().forEach(pair -> views.add(new View(channel, pair))));
        return views;
    }

    /** The pictures of one view. */
    public Pictures pictures(View view) {
        String channel = view.channel().channel();
        int first = index(before.orders(), channel);
        int second = index(after.orders(), channel);
        Optional<Picture> bars = ComparisonPictures.bars(only(view));
        if (first < 0 || second < 0) {
            return new Pictures(bars, Optional.empty(), Optional.empty());
        }
        return new Pictures(
                bars,
                spectra(view, first, second),
                DrawTurn.of(
                        new DrawTurn.Shown(
                                outcome.before(), before, first, view.pair().before()),
                        new DrawTurn.Shown(
                                outcome.after(), after, second, view.pair().after())));
    }

    private RunComparison only(View view) {
        ChannelComparison channel = view.channel();
        ChannelComparison narrowed = new ChannelComparison(
                channel.channel(), channel.unit(), channel.basis(), channel.repeatRuns(), List.of(view.pair()));
        return new RunComparison(
                outcome.before(), outcome.after(), outcome.reasons(), List.of(narrowed), outcome.warnings());
    }

    private Optional<Picture> spectra(View view, int first, int second) {
        ChannelOrders one = before.orders().channels().get(first);
        ChannelOrders other = after.orders().channels().get(second);
        Optional<DwellOrders> marked = other.dwells().stream()
                .filter(dwell -> dwell.dwell().equals(view.pair().after()))
                .findFirst();
        return marked.filter(dwell -> one.unit() == other.unit())
                .map(dwell -> ComparisonPictures.spectra(
                        outcome,
                        curve(before, first, view.pair().before()),
                        curve(after, second, view.pair().after()),
                        other.unit(),
                        dwell,
                        after.orders().ratio()));
    }

    private static Curve curve(AnalysedRecording run, int channel, Dwell dwell) {
        Spectrum spectrum = DrawRecording.spectrum(run, channel, dwell);
        return new Curve(spectrum.frequenciesHz(), spectrum.values());
    }

    private static int index(RunOrders run, String channel) {
        for (int i = 0; i < run.channels().size(); i++) {
            if (run.channels().get(i).channel().equals(channel)) {
                return i;
            }
        }
        return -1;
    }
}
