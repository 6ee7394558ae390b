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

    /** Anywhere in a range. */
    public static SpeedPrior between(double fromHz, double toHz) {
        return new SpeedPrior(OptionalDouble.empty(), fromHz, toHz);
    }

    Optional<Double> entered() {
        return enteredPropellerHz.isPresent() ? Optional.of(enteredPropellerHz.getAsDouble()) : Optional.empty();
    }
}
