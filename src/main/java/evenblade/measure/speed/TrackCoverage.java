package evenblade.measure.speed;

import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Where along a path the lines bear it out. A path runs on through stretches in which the engine turned
 * at a speed outside the range looked at, or stood; those must not pass for dwells.
 */
final class TrackCoverage {
    /** Share of the usual evidence below which a frame doesn't bear the path out. */
    private static final double LEAST_SHARE = 0.3;

    /** A single frame may fall below that by this share before it ends a dwell. */
    private static final double LEAST_OF_ONE = 0.5;

    /** A line is still seen where the last such part of a frame holds it. */
    private static final double SHARE_BEYOND = 3;

    private static final double USUAL_QUANTILE = 0.75; // ours: a quarter of the frames may be poor
    private static final int SMOOTHED_FRAMES = 7; // ours: one poor frame breaks no stretch

    private final WhitenedSpectrogram frames;
    private final boolean[] borne;

    private TrackCoverage(WhitenedSpectrogram frames, boolean[] borne) {
        this.frames = frames;
        this.borne = borne;
    }

    static TrackCoverage of(PathSearch search, PathSearch.Path path, WhitenedSpectrogram frames) {
        double[] evidence = new double[path.hz().length];
        for (int i = 0; i < evidence.length; i++) {
            evidence[i] = search.evidence(path.frame()[i], path.hz()[i]);
        }
        double[] sorted = evidence.clone();
        Arrays.sort(sorted);
        double least = LEAST_SHARE * sorted[(int) (USUAL_QUANTILE * (sorted.length - 1))];
        boolean[] borne = new boolean[evidence.length];
        for (int i = 0; i < borne.length; i++) {
            int from = Math.max(0, i - SMOOTHED_FRAMES / 2);
            int to = Math.min(evidence.length, i + SMOOTHED_FRAMES / 2 + 1);
            double[] near = Arrays.copyOfRange(evidence, from, to);
            Arrays.sort(near);
            borne[i] = near[near.length / 2] >= least && evidence[i] >= LEAST_OF_ONE * least;
        }
        return new TrackCoverage(frames, borne);
    }

    /** The stretches, or the parts of them that are long enough, in which the lines bear the path out. */
    List<DwellFinder.Stretch> borneOut(List<DwellFinder.Stretch> stretches, double shortestS) {
        List<DwellFinder.Stretch> parts = new ArrayList<>();
        for (DwellFinder.Stretch stretch : stretches) {
            parts.addAll(borneOut(stretch, shortestS));
        }
        return parts;
    }

    /** The parts of a stretch, at least so long, in which the lines bear the path out. */
    private List<DwellFinder.Stretch> borneOut(DwellFinder.Stretch stretch, double shortestS) {
        List<DwellFinder.Stretch> parts = new ArrayList<>();
        double begin = stretch.fromS();
        boolean open = true;
        for (int i = 0; i < borne.length; i++) {
            double from = frames.centreS(i) - frames.hopS() / 2;
            double to = frames.centreS(i) + frames.hopS() / 2;
            if (to < stretch.fromS() || from > stretch.toS()) {
                continue;
            }
            if (!borne[i] && open) {
                add(parts, begin, Math.max(begin, from - frames.lengthS() / SHARE_BEYOND), shortestS);
                open = false;
            } else if (borne[i] && !open) {
                begin = Math.max(stretch.fromS(), from + frames.lengthS() / SHARE_BEYOND);
                open = true;
            }
        }
        if (open) {
            add(parts, begin, stretch.toS(), shortestS);
        }
        return parts;
    }

    private static void add(List<DwellFinder.Stretch> parts, double from, double to, double shortestS) {
        if (to - from >= shortestS - 1e-9) {
            parts.add(new DwellFinder.Stretch(from, to));
        }
    }

    /** Said where a good part of the recording isn't borne out. */
    Optional<Warning> warning() {
        int without = 0;
        for (boolean frame : borne) {
            without += frame ? 0 : 1;
        }
        double seconds = without * frames.hopS();
        if (seconds < 2 || without < 0.05 * borne.length) {
            return Optional.empty();
        }
        return Optional.of(Warning.of(WarningCode.SPEED_LOST, Subject.Whole.RECORDING, Measure.TIME.of(seconds)));
    }
}
