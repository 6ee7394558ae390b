package evenblade.machine.installation;

import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.fact.Worded;
import java.util.List;
import java.util.Optional;

/**
 * The drive between engine and propeller.
 *
 * @param kind how the speed is brought down
 * @param ratio engine revolutions per propeller revolution, from the teeth where they are known
 * @param teeth tooth counts, where entered
 */
public record Reduction(Kind kind, double ratio, Optional<Teeth> teeth) {
    /** Below it a propeller would turn five times the engine's speed; a mistyped ratio shows. */
    public static final double LEAST_RATIO = 0.2;

    public static final double MOST_RATIO = 10; // above any drive of this kind; a mistyped ratio shows
    public static final int LEAST_TEETH = 5; // fewer don't mesh
    public static final int MOST_TEETH = 500; // a mistyped number shows

    /** A drive known by its tooth counts; the ratio comes from them. */
    public static Reduction ofTeeth(Kind kind, Teeth teeth) {
        return new Reduction(kind, teeth.ratio(), Optional.of(teeth));
    }

    /** A drive known by its ratio only. */
    public static Reduction ofRatio(Kind kind, double ratio) {
        return new Reduction(kind, ratio, Optional.empty());
    }

    /** The propeller on the crank itself. */
    public static Reduction direct() {
        return ofRatio(Kind.DIRECT, 1);
    }

    /** A propeller that turns faster than its engine is rare, a ratio that is entered upside down isn't. */
    public Optional<Warning> doubt() {
        return ratio < 1
                ? Optional.of(Warning.of(
                        WarningCode.PROPELLER_FASTER_THAN_ENGINE,
                        Subject.Whole.INSTALLATION,
                        Measure.NUMBER.of(ratio),
                        Measure.NUMBER.of(1 / ratio)))
                : Optional.empty();
    }

    /** Kind of drive. */
    public enum Kind implements Worded {
        GEAR,
        BELT,
        DIRECT,
        UNSTATED;

        /** The words that may be entered. */
        public static List<String> words() {
            return List.of(GEAR.word(), BELT.word(), DIRECT.word());
        }

        /** The kind of a word; {@link #UNSTATED} where it is none of {@link #words}. */
        static Kind named(String word) {
            return Worded.named(Kind.class, word).orElse(UNSTATED);
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

        /** Engine revolutions until the same teeth meet again, everything standing as it did. */
        public int engineRevolutionsPerRepeat() {
            return driven / commonDivisor(driving, driven);
        }

        /** Propeller revolutions until the same teeth meet again. */
        public int propellerRevolutionsPerRepeat() {
            return driving / commonDivisor(driving, driven);
        }

        private static int commonDivisor(int a, int b) {
            return b == 0 ? a : commonDivisor(b, a % b);
        }
    }
}
