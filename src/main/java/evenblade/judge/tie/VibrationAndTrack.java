package evenblade.judge.tie;

import evenblade.base.fact.Code;
import evenblade.base.fact.Fact;
import evenblade.base.fact.Value.Count;
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
                    Fact.of(TieFact.TOO_FEW_WITHOUT_PHASE, new Count(runs.size()), new Count(RUNS_WITHOUT_PHASE)),
                    Fact.of(TieFact.MARK_OR_MORE_RUNS, new Count(RUNS_WITHOUT_PHASE - runs.size())));
        }
        if (runs.size() < 2) {
            return notYet(TieFact.ONE_RUN, TieFact.MOVE_AND_MARK);
        }
        if (runs.stream().noneMatch(TieRun::outOfTrack)) {
            return notYet(TieFact.ALL_IN_TRACK, TieFact.LOOK_AT_OTHERS);
        }
        if (runs.stream().noneMatch(r -> runs.stream().anyMatch(r::trackDiffers))) {
            return notYet(TieFact.SAME_TRACK, TieFact.MOVE_AND_MARK);
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
            Optional<PhaseTie> both = byPhase(runs, counting, true, own);
            if (both.isPresent()) {
                return new Tied(both.get(), Optional.empty(), follows);
            }
        }
        return byPhase(runs, counting, false, own)
                .<TieAnswer>map(tie -> new Tied(
                        tie, pitchLeftOut(runs, Fact.of(TieFact.ANGLES_NEED_RUNS, new Count(RUNS_FOR_PITCH))), follows))
                .orElseGet(() -> notYet(TieFact.SAME_TRACK, TieFact.MOVE_AND_MARK));
    }

    private static TieAnswer withoutPhase(List<TieRun> runs, Follows follows) {
        if (!SquaredTerms.tellApart(runs, false)) {
            return notYet(TieFact.TRACKS_ALIKE, TieFact.ANOTHER_TRACK_OR_MARK);
        }
        boolean pitch = pitchRead(runs) && SquaredTerms.tellApart(runs, true);
        return AmplitudeTie.of(runs, pitch)
                .<TieAnswer>map(tie -> new Tied(
                        tie,
                        pitch
                                ? Optional.empty()
                                : pitchLeftOut(
                                        runs,
                                        Fact.of(
                                                TieFact.ANGLES_NEED_RUNS_WITHOUT_PHASE,
                                                new Count(SquaredTerms.number(runs)))),
                        follows))
                .orElseGet(() -> notYet(TieFact.NO_SINGLE_TIE, TieFact.REPEAT));
    }

    private static boolean pitchRead(List<TieRun> runs) {
        return runs.stream().allMatch(r -> r.pitchDeg().isPresent());
    }

    private static NotYet notYet(TieFact why, TieFact whatWouldSettle) {
        return new NotYet(Fact.of(why), Fact.of(whatWouldSettle));
    }

    private static Optional<Fact> pitchLeftOut(List<TieRun> runs, Fact takes) {
        if (runs.stream().noneMatch(r -> r.pitchDeg().isPresent())) {
            return Optional.empty();
        }
        return Optional.of(
                Fact.of(TieFact.ANGLES_HIDDEN, pitchRead(runs) ? takes : Fact.of(TieFact.ANGLES_NOT_ALWAYS_READ)));
    }

    /** Why runs can't tell yet what goes with track, what would settle it, and what hides in the answer. */
    public enum TieFact implements Code {
        TOO_FEW_WITHOUT_PHASE,
        ONE_RUN,
        ALL_IN_TRACK,
        SAME_TRACK,
        TRACKS_ALIKE,
        NO_SINGLE_TIE,
        MOVE_AND_MARK,
        MARK_OR_MORE_RUNS,
        LOOK_AT_OTHERS,
        ANOTHER_TRACK_OR_MARK,
        REPEAT,
        ANGLES_HIDDEN,
        ANGLES_NOT_ALWAYS_READ,
        ANGLES_NEED_RUNS,
        ANGLES_NEED_RUNS_WITHOUT_PHASE
    }
}
