package evenblade.tie;

import evenblade.numeric.Phasor;
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
 * @param pitchDeg blade angles once a turn in degrees, where they were read
 */
public record TieRun(
        String label,
        double amplitude,
        double standardError,
        OptionalDouble phaseDegrees,
        Phasor trackMm,
        Optional<Phasor> pitchDeg) {
    public TieRun {
        if (!(amplitude >= 0) || !(standardError > 0)) {
            throw new IllegalArgumentException(
                    "amplitude " + amplitude + " with standard error " + standardError + " in run " + label);
        }
    }

    /** The vibration as a phasor; only where the phase is known. */
    Phasor vibration() {
        return Phasor.ofDegrees(amplitude, phaseDegrees.orElseThrow());
    }
}
