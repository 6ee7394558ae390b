package evenblade.judge.tie;

import evenblade.base.numeric.Phasor;
import java.util.List;
import java.util.Optional;

/** A tie of vibration to track, from which questions are answered. Units are those of the runs. */
public sealed interface TrackTie permits PhaseTie, AmplitudeTie {
    /** |c|: what would be left of 1× at perfect track. */
    Size left();

    /** |k|: vibration per mm of track. */
    Size perMillimetre();

    /** |q|: vibration per degree of pitch; nothing where pitch wasn't read in every run, or can't be told. */
    Optional<Size> perDegree();

    /** For each run, how much of its 1× goes with track, |k·T|. */
    List<Share> shares();

    /** The estimate of {@link #predicted} alone; quick, for searches. */
    double expected(Phasor trackMm);

    /**
     * 1× that a track would make, pitch as it was in the last run.
     *
     * @param trackMm track once a turn, counted as in the runs
     * @param trackErrorMm standard error of each of its two parts, 0 or more
     */
    Size predicted(Phasor trackMm, double trackErrorMm);

    /** Whether the runs show that 1× changes with track at all, at 1 chance in 20. */
    boolean trackMatters();

    /**
     * Part of a run's 1× that goes with track.
     *
     * @param label of the run
     * @param measured amplitude measured
     * @param withTrack |k·T|
     */
    record Share(String label, double measured, Size withTrack) {}
}
