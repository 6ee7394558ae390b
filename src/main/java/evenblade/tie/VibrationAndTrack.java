package evenblade.tie;

import evenblade.numeric.LinearDesign;
import evenblade.tie.TieAnswer.NotYet;
import evenblade.tie.TieAnswer.SideBySide;
import evenblade.tie.TieAnswer.Tied;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Judges what the runs can tell, and ties vibration to track where they can. */
public final class VibrationAndTrack {
    /** Without phase, a point estimate takes so many runs. */
    public static final int RUNS_WITHOUT_PHASE = 4;

    private VibrationAndTrack() {}

    /**
     * Ties runs, by phase where every run has one, by amplitudes alone otherwise.
     *
     * @param runs comparable runs in order of time: same dwell speed, same sensor in the same place
     * @param counting sense in which the hub positions are counted
     */
    public static TieAnswer of(List<TieRun> runs, HubCounting counting) {
        boolean phase =
                !runs.isEmpty() && runs.stream().allMatch(r -> r.phaseDegrees().isPresent());
        return phase ? withPhase(runs, counting) : withoutPhase(runs);
    }

    private static TieAnswer withPhase(List<TieRun> runs, HubCounting counting) {
        boolean pitch = runs.stream().allMatch(r -> r.pitchDeg().isPresent());
        // Pitch needs a run more than the unknowns, or it would take the track's part at random.
        var both = pitch && runs.size() > 3 ? PhaseTie.of(runs, counting, true) : Optional.<PhaseTie>empty();
        return both.or(() -> runs.size() < 2 ? Optional.empty() : PhaseTie.of(runs, counting, false))
                .<TieAnswer>map(Tied::new)
                .orElseGet(() -> new NotYet(
                        runs.size() < 2
                                ? "One run can't tell what goes with track."
                                : "The track was the same in all runs, so nothing can be seen to go with it.",
                        "One more run at the same speed with the blades moved, and the tips marked before it.",
                        sideBySide(runs)));
    }

    private static TieAnswer withoutPhase(List<TieRun> runs) {
        if (runs.size() < RUNS_WITHOUT_PHASE) {
            return new NotYet(
                    runs.size() + " run(s) without phase; it takes " + RUNS_WITHOUT_PHASE + ".",
                    "Either a once-per-turn mark in two runs with different track, or "
                            + (RUNS_WITHOUT_PHASE - runs.size())
                            + " more run(s) with different track: other place and other size.",
                    sideBySide(runs));
        }
        if (!tellsApart(runs)) {
            return new NotYet(
                    "The tracks of these runs are too much alike in size or place: more than one answer fits them.",
                    "A run with a clearly smaller or larger track than the others, or a once-per-turn mark.",
                    sideBySide(runs));
        }
        return AmplitudeTie.of(runs)
                .<TieAnswer>map(Tied::new)
                .orElseGet(() -> new NotYet(
                        "The amplitudes follow no single tie to track.",
                        "Repeat a run with nothing changed, to see how much runs scatter by themselves.",
                        sideBySide(runs)));
    }

    /**
     * Whether |V|² = |c|² + |k|²|T|² + 2Re(c̄kT) leaves one answer. Its terms 1, |T|², Re T, Im T must be independent; where
     * all T lie on one line through zero (two blades always do), 1, |T|² and the place along that line.
     */
    private static boolean tellsApart(List<TieRun> runs) {
        double[][] plane = new double[runs.size()][];
        double[][] places = new double[runs.size()][];
        double[][] line = new double[runs.size()][];
        TieRun largest = runs.stream()
                .max(Comparator.comparingDouble(r -> r.trackMm().magnitude()))
                .orElseThrow();
        double scale = largest.trackMm().magnitude();
        if (scale == 0) {
            return false;
        }
        for (int r = 0; r < plane.length; r++) {
            double re = runs.get(r).trackMm().re() / scale;
            double im = runs.get(r).trackMm().im() / scale;
            double along = (re * largest.trackMm().re() + im * largest.trackMm().im()) / scale;
            plane[r] = new double[] {1, re * re + im * im, re, im};
            places[r] = new double[] {re, im};
            line[r] = new double[] {1, along * along, along};
        }
        return LinearDesign.of(places).rank() == 1
                ? LinearDesign.of(line).rank() == 3
                : LinearDesign.of(plane).rank() == 4;
    }

    private static List<SideBySide> sideBySide(List<TieRun> runs) {
        return runs.stream()
                .map(r -> new SideBySide(r.label(), r.trackMm().magnitude(), r.amplitude()))
                .toList();
    }
}
