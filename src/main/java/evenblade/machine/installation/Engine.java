package evenblade.machine.installation;

import evenblade.base.fact.Worded;
import evenblade.base.problem.BadInput;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * The engine or motor.
 *
 * @param cycle how often a cylinder fires
 * @param cylinders number of cylinders; 0 for an electric motor
 * @param idleRpm lowest speed it runs at, where stated
 * @param maxRpm highest speed it may run at, where stated
 */
public record Engine(Cycle cycle, int cylinders, OptionalDouble idleRpm, OptionalDouble maxRpm) {
    public static final int LEAST_CYLINDERS = 1; // an electric motor counts as one
    public static final int MOST_CYLINDERS = 24; // more than any such engine; a mistyped number shows
    /** The slowest and fastest speed that may be entered, in rpm. */
    public static final double LEAST_RPM = 10;

    /** More than any motor that drives a propeller; a mistyped number shows. */
    public static final double MOST_RPM = 100_000;

    /** Engine cycle, with the number of crank revolutions between two firings of one cylinder. */
    public enum Cycle implements Worded {
        TWO_STROKE(1),
        FOUR_STROKE(2),
        ELECTRIC(0);

        private final int revolutionsPerFiring;

        Cycle(int revolutionsPerFiring) {
            this.revolutionsPerFiring = revolutionsPerFiring;
        }

        /** The words of all cycles. */
        public static List<String> words() {
            return List.of(TWO_STROKE.word(), FOUR_STROKE.word(), ELECTRIC.word());
        }

        /** The cycle of a word out of {@link #words}. */
        static Cycle named(String word) {
            return Worded.named(Cycle.class, word)
                    .orElseThrow(() -> new IllegalArgumentException("no cycle '" + word + "'"));
        }

        /** Crank revolutions between two firings of one cylinder; 0 where nothing fires. */
        public int revolutionsPerFiring() {
            return revolutionsPerFiring;
        }
    }

    /**
     * Refuses a speed that this engine doesn't run at.
     *
     * @param engineRpm the speed asked for
     * @param place what to name in the complaint
     * @throws BadInput where it lies below idle or above the highest speed, as far as they are stated
     */
    public void requireRunsAt(double engineRpm, BadInput.Place place) {
        double least = idleRpm.orElse(LEAST_RPM);
        double most = maxRpm.orElse(MOST_RPM);
        if (!(engineRpm >= least && engineRpm <= most)) {
            throw place.found(
                    String.format(Locale.ROOT, "%s rpm", shortest(engineRpm)),
                    String.format(
                            Locale.ROOT,
                            "an engine speed from %s (%s) to %s rpm (%s)",
                            shortest(least),
                            idleRpm.isPresent() ? "idle" : "the least taken",
                            shortest(most),
                            maxRpm.isPresent() ? "the stated maximum" : "the most taken"));
        }
    }

    private static String shortest(double rpm) {
        // Above, a double no longer holds every whole number.
        return rpm == Math.rint(rpm) && Math.abs(rpm) < 1e15 ? String.valueOf((long) rpm) : String.valueOf(rpm);
    }

    /** Firings per crank revolution of all cylinders together; 0 for an electric motor. */
    public double firingOrder() {
        return cycle == Cycle.ELECTRIC ? 0 : (double) cylinders / cycle.revolutionsPerFiring();
    }
}
