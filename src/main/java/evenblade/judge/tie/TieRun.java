package evenblade.judge.tie;

import evenblade.base.numeric.Phasor;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One run with what the static checks said about the propeller as it ran.
 *
 * @param label names the run for people
 * @param amplitude of propeller 1× at the dwell compared, in the channel's unit
 * @param standardError of the amplitude, above 0; with the scatter between repeat runs in it, where that is known
 * @param phaseDegrees phase against the mark, where there was one
 * @param trackMm track once a turn in mm, of the layout that ran
 * @param trackErrorMm standard error of each of its two parts in mm, 0 or more
 * @param pitchDeg blade angles once a turn in degrees, where they were read
 * @param marks which marking of the tips the track comes from; runs with the same share its error
 * @param seating blades by hub position as they ran; runs with the same differ in track alone, not in where the blades'
 *     mass and angles lie
 */
public record TieRun(
        String label,
        double amplitude,
        double standardError,
        OptionalDouble phaseDegrees,
        Phasor trackMm,
        double trackErrorMm,
        Optional<Phasor> pitchDeg,
        String marks,
        List<String> seating) {
    /** √χ²(0.95) with two degrees of freedom, −2 ln 0.05. */
    private static final double TELLING = Math.sqrt(-2 * Math.log(0.05));

    public TieRun {
        seating = List.copyOf(seating);
        if (!(amplitude >= 0) || !(standardError > 0) || !(trackErrorMm >= 0)) {
            throw new IllegalArgumentException("amplitude " + amplitude + " with standard error " + standardError
                    + ", track with " + trackErrorMm + " in run " + label);
        }
    }

    /** This run with another standard error, above 0. */
    public TieRun withError(double error) {
        return new TieRun(label, amplitude, error, phaseDegrees, trackMm, trackErrorMm, pitchDeg, marks, seating);
    }

    /** Size of the track once a turn, mm. */
    public double trackSizeMm() {
        return trackMm.magnitude();
    }

    /** Whether there is more track than the pencil's error makes, at 1 chance in 20 or so. */
    boolean outOfTrack() {
        return trackMm.magnitude() > TELLING * trackErrorMm;
    }

    /** Whether the track differs from another run's by more than the pencil's error, at 1 chance in 20 or so. */
    boolean trackDiffers(TieRun other) {
        return trackMm.minus(other.trackMm).magnitude() > TELLING * Math.hypot(trackErrorMm, other.trackErrorMm);
    }

    /** Whether the track was changed from the other run while all blades stayed where they sat. */
    boolean trackChangedAlone(TieRun other) {
        return seating.equals(other.seating) && trackDiffers(other);
    }

    /** The vibration as a phasor; only where the phase is known. */
    Phasor vibration() {
        return Phasor.ofDegrees(amplitude, phaseDegrees.orElseThrow());
    }
}
