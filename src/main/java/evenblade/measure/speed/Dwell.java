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
 * @param secondEngine size of the lines of a second engine that beat with these, as a share of them; 0 where none
 *     is heard, 1 where the track may follow either
 */
public record Dwell(
        double fromS,
        double toS,
        double propellerHz,
        double standardErrorHz,
        double minHz,
        double maxHz,
        List<OrderLine> confirmedBy,
        double secondEngine) {
    public Dwell {
        confirmedBy = List.copyOf(confirmedBy);
    }

    /** A dwell that a mark bears out. */
    public Dwell(double fromS, double toS, double propellerHz, double standardErrorHz, double minHz, double maxHz) {
        this(fromS, toS, propellerHz, standardErrorHz, minHz, maxHz, List.of());
    }

    /** A dwell in which no second engine is heard. */
    public Dwell(
            double fromS,
            double toS,
            double propellerHz,
            double standardErrorHz,
            double minHz,
            double maxHz,
            List<OrderLine> confirmedBy) {
        this(fromS, toS, propellerHz, standardErrorHz, minHz, maxHz, confirmedBy, 0);
    }

    Dwell confirmedBy(List<OrderLine> lines) {
        return new Dwell(fromS, toS, propellerHz, standardErrorHz, minHz, maxHz, lines, secondEngine);
    }

    /** This dwell with a second engine beside it. */
    Dwell beside(SecondEngine other) {
        double untold = other.followsOne() ? 0 : SecondEngine.UNTOLD * propellerHz;
        return new Dwell(
                fromS,
                toS,
                propellerHz,
                Math.hypot(standardErrorHz, untold),
                minHz,
                maxHz,
                confirmedBy,
                other.followsOne() ? other.strength() : 1);
    }

    /** This dwell with another error of its speed. */
    public Dwell withStandardErrorHz(double errorHz) {
        return new Dwell(fromS, toS, propellerHz, errorHz, minHz, maxHz, confirmedBy, secondEngine);
    }

    public double durationS() {
        return toS - fromS;
    }

    public double propellerRpm() {
        return 60 * propellerHz;
    }
}
