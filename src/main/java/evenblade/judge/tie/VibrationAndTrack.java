package evenblade.judge.tie;

import evenblade.judge.tie.TieAnswer.Follows;
import evenblade.judge.tie.TieAnswer.NotYet;
import evenblade.judge.tie.TieAnswer.Tied;
import evenblade.machine.installation.HubCounting;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Judges what the runs can tell, and ties vibration to track where they can. */
public final class VibrationAndTrack {
    /** Without phase, a point estimate takes so many runs. */
    public static final int RUNS_WITHOUT_PHASE = 4;

    /** Pitch needs a run more than its unknowns, or it would take the track's part at random. */
    private static final int RUNS_FOR_PITCH = 4;

    private static final String MOVED =
            "One more run at the same speed with the blades moved, and the tips marked before it.";

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
        if (!phase && runs.size() < RUNS_WITHOUT_PHASE) {
            return new NotYet(
                    count(runs.size(), "") + " without phase; it takes " + RUNS_WITHOUT_PHASE + ".",
                    "Either a once-per-turn mark in two runs with different track, or "
                            + count(RUNS_WITHOUT_PHASE - runs.size(), " more")
                            + " with different track: other place and other size.");
        }
        if (runs.size() < 2) {
            return new NotYet("One run can't tell what goes with track.", MOVED);
        }
        if (runs.stream().noneMatch(TieRun::outOfTrack)) {
            return new NotYet(
                    "The tips tracked in all runs as well as the marks can tell, so track has little to do with the"
                            + " shaking.",
                    "Nothing, while they track like this; look at the other findings.");
        }
        if (runs.stream().noneMatch(r -> runs.stream().anyMatch(r::trackDiffers))) {
            return new NotYet(
                    "The track was the same in all runs, as far as the marks can tell, so nothing can be seen to go with"
                            + " it.",
                    MOVED);
        }
        boolean alone = runs.stream().anyMatch(r -> runs.stream().anyMatch(r::trackChangedAlone));
        if (phase) {
            return withPhase(runs, counting, alone ? Follows.TRACK : Follows.BLADES);
        }
        // Without phase only runs with the blades in one order say what goes with track.
        List<TieRun> stayed = alone ? seatedAlike(runs) : List.of();
        return stayed.size() >= RUNS_WITHOUT_PHASE && SquaredTerms.tellApart(stayed, false)
                ? withoutPhase(stayed, Follows.TRACK)
                : withoutPhase(runs, Follows.BLADES);
    }

    /** With a c of its own for each seating where track alone counts, unless one c for all does as well. */
    private static Optional<PhaseTie> byPhase(List<TieRun> runs, HubCounting counting, boolean pitch, boolean ownRest) {
        Optional<PhaseTie> common = PhaseTie.of(runs, counting, pitch, false);
        if (!ownRest) {
            return common;
        }
        Optional<PhaseTie> own = PhaseTie.of(runs, counting, pitch, true);
        return own.isPresent() && common.isPresent() && own.get().oneRestDoes(common.get()) ? common : own;
    }

    /** The runs of the seating that most of them had. */
    private static List<TieRun> seatedAlike(List<TieRun> runs) {
        return runs.stream()
                .map(one -> runs.stream()
                        .filter(r -> r.seating().equals(one.seating()))
                        .toList())
                .max(Comparator.comparingInt(List::size))
                .orElseThrow();
    }

    private static TieAnswer withPhase(List<TieRun> runs, HubCounting counting, Follows follows) {
        boolean own = follows == Follows.TRACK;
        if (pitchRead(runs) && runs.size() >= RUNS_FOR_PITCH) {
            Optional<PhaseTie> both = settled(runs, tied -> byPhase(tied, counting, true, own));
            if (both.isPresent()) {
                return new Tied(both.get(), Optional.empty(), follows);
            }
        }
        return settled(runs, tied -> byPhase(tied, counting, false, own))
                .<TieAnswer>map(tie -> new Tied(
                        tie,
                        pitchLeftOut(
                                runs,
                                "it takes " + RUNS_FOR_PITCH
                                        + " runs in which track and angles were not changed together"),
                        follows))
                .orElseGet(() ->
                        new NotYet("The track was the same in all runs, so nothing can be seen to go with it.", MOVED));
    }

    private static TieAnswer withoutPhase(List<TieRun> runs, Follows follows) {
        if (!SquaredTerms.tellApart(runs, false)) {
            return new NotYet(
                    "The tracks of these runs are too much alike in size or place: more than one answer fits them.",
                    "A run with a clearly smaller or larger track than the others, or a once-per-turn mark.");
        }
        boolean pitch = pitchRead(runs) && SquaredTerms.tellApart(runs, true);
        return settled(runs, tied -> AmplitudeTie.of(tied, pitch))
                .<TieAnswer>map(tie -> new Tied(
                        tie,
                        pitch
                                ? Optional.empty()
                                : pitchLeftOut(
                                        runs,
                                        "without phase it takes " + SquaredTerms.number(runs)
                                                + " runs in which track and angles were changed one without the other"),
                        follows))
                .orElseGet(() -> new NotYet(
                        "The amplitudes follow no single tie to track.",
                        "Repeat a run with nothing changed, to see how much runs scatter by themselves."));
    }

    /** Fitted twice: the first fit says how much vibration the pencil's error stands for. */
    private static <T extends TrackTie> Optional<T> settled(List<TieRun> runs, Fitting<T> fitting) {
        Optional<T> first = fitting.fit(runs);
        if (first.isEmpty() || runs.stream().allMatch(r -> r.trackErrorMm() == 0)) {
            return first;
        }
        double perMillimetre = first.get().perMillimetre().value();
        return fitting.fit(runs.stream().map(r -> r.widened(perMillimetre)).toList());
    }

    private interface Fitting<T extends TrackTie> {
        Optional<T> fit(List<TieRun> runs);
    }

    private static boolean pitchRead(List<TieRun> runs) {
        return runs.stream().allMatch(r -> r.pitchDeg().isPresent());
    }

    private static Optional<String> pitchLeftOut(List<TieRun> runs, String takes) {
        if (runs.stream().noneMatch(r -> r.pitchDeg().isPresent())) {
            return Optional.empty();
        }
        String why = pitchRead(runs) ? takes : "they weren't read before every run";
        return Optional.of("The blade angles differ too, but their part can't be told from these runs: " + why
                + ". It hides in what goes with track and in what is left.");
    }

    private static String count(int runs, String more) {
        return runs + more + (runs == 1 ? " run" : " runs");
    }
}
