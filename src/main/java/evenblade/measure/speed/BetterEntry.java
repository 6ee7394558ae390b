package evenblade.measure.speed;

import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * An entry that explains the lines clearly better than what was entered.
 *
 * @param ratio another reduction ratio
 * @param blades or another number of blades
 * @param sameSpeed whether it is the same speed that it explains better
 */
record BetterEntry(OptionalDouble ratio, OptionalInt blades, boolean sameSpeed) {
    static BetterEntry ratio(double ratio) {
        return new BetterEntry(OptionalDouble.of(ratio), OptionalInt.empty(), false);
    }

    static BetterEntry blades(int blades, boolean sameSpeed) {
        return new BetterEntry(OptionalDouble.empty(), OptionalInt.of(blades), sameSpeed);
    }
}
