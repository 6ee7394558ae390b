package evenblade.measure.speed;

import evenblade.machine.installation.OrderLine;
import java.util.List;

/**
 * A stretch of a run in which nobody moved the throttle, at a speed that the signal or a mark bears out.
 *
 * @param fromS start, seconds into the recording
 * @param toS end
 * @param propellerHz mean propeller speed
 * @param standardErrorHz of that mean
 * @param minHz slowest in the stretch
 * @param maxHz fastest in the stretch
 * @param confirmedBy lines whose agreement confirms the speed, strongest first; empty where a mark does
 */
public record Dwell(
        double fromS,
        double toS,
        double propellerHz,
        double standardErrorHz,
        double minHz,
        double maxHz,
        List<OrderLine> confirmedBy) {
    public Dwell {
        confirmedBy = List.copyOf(confirmedBy);
    }

    /** A dwell that a mark bears out. */
    public Dwell(double fromS, double toS, double propellerHz, double standardErrorHz, double minHz, double maxHz) {
        this(fromS, toS, propellerHz, standardErrorHz, minHz, maxHz, List.of());
    }

    Dwell confirmedBy(List<OrderLine> lines) {
        return new Dwell(fromS, toS, propellerHz, standardErrorHz, minHz, maxHz, lines);
    }

    /** This dwell with another error of its speed. */
    Dwell withStandardErrorHz(double errorHz) {
        return new Dwell(fromS, toS, propellerHz, errorHz, minHz, maxHz, confirmedBy);
    }

    public double durationS() {
        return toS - fromS;
    }

    public double propellerRpm() {
        return 60 * propellerHz;
    }
}
