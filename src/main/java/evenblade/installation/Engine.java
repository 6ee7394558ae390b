package evenblade.installation;

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
    /** Engine cycle, with the number of crank revolutions between two firings of one cylinder. */
    public enum Cycle {
        TWO_STROKE("two-stroke", 1),
        FOUR_STROKE("four-stroke", 2),
        ELECTRIC("electric", 0);

        private final String word;
        private final int revolutionsPerFiring;

        Cycle(String word, int revolutionsPerFiring) {
            this.word = word;
            this.revolutionsPerFiring = revolutionsPerFiring;
        }

        /** As written in installation files. */
        public String word() {
            return word;
        }

        /** Crank revolutions between two firings of one cylinder; 0 where nothing fires. */
        public int revolutionsPerFiring() {
            return revolutionsPerFiring;
        }
    }

    /** Firings per crank revolution of all cylinders together; 0 for an electric motor. */
    public double firingOrder() {
        return cycle == Cycle.ELECTRIC ? 0 : (double) cylinders / cycle.revolutionsPerFiring();
    }
}
