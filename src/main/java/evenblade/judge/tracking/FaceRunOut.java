package evenblade.judge.tracking;

import evenblade.base.problem.BadInput;
import evenblade.base.units.Angle;
import evenblade.base.units.Length;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Face run-out of the propeller flange, read with a dial gauge over one turn.
 *
 * @param at when
 * @param total largest minus smallest reading of the dial, 0 or more
 * @param dialRadius how far from the shaft's centre the dial touched, above 0
 * @param high where on the hub the dial read highest, as an angle from hub position 1, where noted
 */
public record FaceRunOut(Instant at, Length total, Length dialRadius, Optional<Angle> high) {
    public FaceRunOut {
        if (!(total.metres() >= 0) || !Double.isFinite(total.metres())) {
            throw BadInput.in("run-out").found(total.millimetres() + " mm", "a total reading of 0 or more");
        }
        if (!(dialRadius.metres() > 0) || !Double.isFinite(dialRadius.metres())) {
            throw BadInput.in("run-out").found("a dial radius of " + dialRadius.millimetres() + " mm", "above 0");
        }
    }

    /** Carried out to the tips: track error peak to peak, total × tip radius / dial radius. */
    public Length atTip(Length tipRadius) {
        return Length.ofMetres(total.metres() * tipRadius.metres() / dialRadius.metres());
    }

    /**
     * What a flange tilted like this does to the tips: half of {@link #atTip} times cos(θ − θ_high), in mm by hub
     * position.
     *
     * @return nothing where the high place wasn't noted
     */
    public Optional<List<Double>> predictedMarksMm(int positions, Length tipRadius) {
        return high.map(place -> {
            List<Double> marks = new ArrayList<>();
            for (int p = 1; p <= positions; p++) {
                double off = Math.toRadians(HubPattern.degreesAt(p, positions) - place.degrees());
                marks.add(atTip(tipRadius).millimetres() / 2 * Math.cos(off));
            }
            return marks;
        });
    }
}
