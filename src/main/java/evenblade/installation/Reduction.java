package evenblade.installation;

import java.util.Optional;

/**
 * The drive between engine and propeller.
 *
 * @param kind how the speed is brought down
 * @param ratio engine revolutions per propeller revolution, from the teeth where they are known
 * @param teeth tooth counts, where entered
 */
public record Reduction(Kind kind, double ratio, Optional<Teeth> teeth) {
    /** Kind of drive. */
    public enum Kind {
        GEAR("gear"),
        BELT("belt"),
        DIRECT("direct"),
        UNSTATED("unstated");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        /** As written in installation files. */
        public String word() {
            return word;
        }
    }

    /**
     * Tooth counts of the pair.
     *
     * @param driving teeth on the engine's side
     * @param driven teeth on the propeller's side
     */
    public record Teeth(int driving, int driven) {
        public double ratio() {
            return (double) driven / driving;
        }
    }
}
