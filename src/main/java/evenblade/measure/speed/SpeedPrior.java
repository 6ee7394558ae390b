package evenblade.measure.speed;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is known of the speed beforehand.
 *
 * @param enteredPropellerHz speed entered by the user, in propeller revolutions per second
 * @param fromHz slowest propeller speed to look at
 * @param toHz fastest
 */
public record SpeedPrior(OptionalDouble enteredPropellerHz, double fromHz, double toHz) {
    /** Used where no tolerance is stated, as a share of the entered speed. */
    public static final double DEFAULT_TOLERANCE = 0.05;

    /** Standard deviation of an entered speed, in logarithm. */
    private static final double WIDTH = 0.08;
    /** A tachometer read while it stands still: common practice, no source. */
    private static final double READ_OFF = 0.02;
    /** In lines that stand. */
    private static final double BONUS = 1;

    public SpeedPrior {
        if (!(fromHz > 0 && toHz >= fromHz)) {
            throw new IllegalArgumentException("speed range " + fromHz + " to " + toHz + " Hz");
        }
    }

    /** Around an entered speed. */
    public static SpeedPrior around(double propellerHz, double toleranceShare) {
        return new SpeedPrior(
                OptionalDouble.of(propellerHz), propellerHz * (1 - toleranceShare), propellerHz * (1 + toleranceShare));
    }

    /** Anywhere in a range, likelier near an entered speed. */
    public static SpeedPrior near(double propellerHz, double fromHz, double toHz) {
        return new SpeedPrior(
                OptionalDouble.of(propellerHz), Math.min(fromHz, propellerHz), Math.max(toHz, propellerHz));
    }

    /** Anywhere in a range. */
    public static SpeedPrior between(double fromHz, double toHz) {
        return new SpeedPrior(OptionalDouble.empty(), fromHz, toHz);
    }

    /**
     * What an entered speed adds to the count of lines at a speed: one line at the entered speed, little at 15 % off,
     * so that it settles a draw and never outvotes what is seen. A dial is some 5 % wrong, a guess 15 % (common
     * practice, no source).
     */
    double bonus(double propellerHz) {
        if (enteredPropellerHz.isEmpty()) {
            return 0;
        }
        double off = Math.log(propellerHz / enteredPropellerHz.getAsDouble()) / WIDTH;
        return BONUS * Math.exp(-off * off / 2);
    }

    /** Whether a speed was entered and lies near this one, as a dial is read. */
    boolean expects(double propellerHz) {
        return enteredPropellerHz.isPresent()
                && Math.abs(Math.log(propellerHz / enteredPropellerHz.getAsDouble())) < WIDTH;
    }

    /** Whether a speed was entered as good as a tachometer shows it, and is this one. */
    boolean readOff(double propellerHz) {
        return enteredPropellerHz.isPresent()
                && Math.abs(Math.log(propellerHz / enteredPropellerHz.getAsDouble())) < READ_OFF;
    }

    /** Whether two speeds differ by no more than a dial is wrong. */
    static boolean agree(double propellerHz, double enteredHz) {
        return Math.abs(Math.log(propellerHz / enteredHz)) < DEFAULT_TOLERANCE;
    }

    Optional<Double> entered() {
        return enteredPropellerHz.isPresent() ? Optional.of(enteredPropellerHz.getAsDouble()) : Optional.empty();
    }
}
