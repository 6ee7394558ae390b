package evenblade.machine.plan;

import evenblade.machine.installation.Engine;
import java.util.List;
import java.util.TreeSet;

/** The speeds to hold where none were asked for. */
final class DwellSpeeds {
    /**
     * The lowest dwell is at this share of the highest speed, or at idle where that is faster. A pull that grows with speed
     * squared has a sixth of its full size there; at idle it has far less, and a mass or a track fault hides in the noise
     * (own choice).
     */
    static final double LOW_SHARE = 0.4;

    /** The highest dwell stays this share of the highest speed, to leave the limit alone. */
    static final double HIGH_SHARE = 0.9;

    private static final int COUNT = 5; // common practice, no source: idle to full in four steps
    private static final double ROUND_TO_RPM = 50; // what a cockpit's gauge shows

    private DwellSpeeds() {}

    /**
     * Five speeds up to 90 % of the highest, rounded to 50 rpm except for idle; idle alone where no highest speed is
     * stated; none where neither is.
     */
    static List<Double> of(Engine engine) {
        if (engine.maxRpm().isEmpty()) {
            return engine.idleRpm().isPresent() ? List.of(engine.idleRpm().getAsDouble()) : List.of();
        }
        double max = engine.maxRpm().getAsDouble();
        double worthwhile = ROUND_TO_RPM * Math.ceil(LOW_SHARE * max / ROUND_TO_RPM);
        double low = Math.max(engine.idleRpm().orElse(0), worthwhile);
        double high = HIGH_SHARE * max;
        TreeSet<Double> speeds = new TreeSet<>();
        speeds.add(low);
        for (int i = 1; i < COUNT; i++) {
            double speed = ROUND_TO_RPM * Math.floor((low + (high - low) * i / (COUNT - 1)) / ROUND_TO_RPM);
            if (speed > low) {
                speeds.add(speed);
            }
        }
        return List.copyOf(speeds);
    }
}
