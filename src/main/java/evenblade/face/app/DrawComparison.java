package evenblade.face.app;

import evenblade.judge.comparison.DwellComparison;
import evenblade.judge.comparison.RunComparison;
import evenblade.judge.comparison.RunComparison.ChannelComparison;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import evenblade.tell.chart.Picture;
import evenblade.tell.document.FigureFormat;
import evenblade.tell.report.ComparisonPictures;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Answers what two compared runs look like beside each other: each channel at each speed that both held. */
public final class DrawComparison {
    private final RunComparison outcome;
    private final DrawPair pair;

    private DrawComparison(RunComparison outcome, DrawPair pair) {
        this.outcome = outcome;
        this.pair = pair;
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
    public record Pictures(Optional<Picture> orders, Optional<Picture> spectra, Optional<Picture> turn) {
        /** Those there are by name, a word fit for a file. */
        public Map<String, Picture> byName() {
            Map<String, Picture> named = new LinkedHashMap<>();
            orders.ifPresent(picture -> named.put("orders", picture));
            spectra.ifPresent(picture -> named.put("spectra", picture));
            turn.ifPresent(picture -> named.put("turn", picture));
            return named;
        }
    }

    /**
     * Looks at both runs as they are kept; empty where they can't be compared.
     *
     * @throws evenblade.base.problem.BadInput where a recording can't be used
     */
    public static Optional<DrawComparison> prepare(Path job, CompareRuns.Answer compared) {
        RunComparison outcome = compared.comparison();
        if (!outcome.comparable()) {
            return Optional.empty();
        }
        JobRuns runs = new JobRuns(JobFolder.open(job));
        return Optional.of(new DrawComparison(
                outcome, new DrawPair(named(runs, compared.before()), named(runs, compared.after()))));
    }

    private static DrawPair.Named named(JobRuns runs, Event run) {
        return new DrawPair.Named(runs.nameOf(run), runs.result(run, true).run());
    }

    /** What can be looked at, in the order of the comparison: what tells most comes first. */
    public List<View> views() {
        List<View> views = new ArrayList<>();
        outcome.channels().forEach(channel -> channel.dwells().forEach(both -> views.add(new View(channel, both))));
        return views;
    }

    /** The pictures of one view. */
    public Pictures pictures(View view) {
        RunComparison only = only(view);
        return new Pictures(ComparisonPictures.bars(only), pair.spectra(only), pair.turn(only));
    }

    /** The pictures of the channel and the speed that tell most, as in the report. */
    public Pictures telling() {
        return new Pictures(ComparisonPictures.bars(outcome), pair.spectra(outcome), pair.turn(outcome));
    }

    private RunComparison only(View view) {
        ChannelComparison channel = view.channel();
        ChannelComparison narrowed = new ChannelComparison(
                channel.channel(), channel.unit(), channel.basis(), channel.repeatRuns(), List.of(view.pair()));
        return new RunComparison(
                outcome.before(), outcome.after(), outcome.reasons(), List.of(narrowed), outcome.warnings());
    }
}
