package evenblade.judge.comparison;

import evenblade.base.fact.Worded;
import evenblade.base.units.SignalUnit;

/** What of two channels may be compared. */
public enum Basis implements Worded {
    /** Amplitudes, for both have the same known scale. */
    ABSOLUTE,
    /** Only ratios within each run, which no gain can change. */
    GAIN_FREE;

    /**
     * The law by which a figure is brought to the same speed: the exponent of rpm. An unbalanced mass on
     * soft mounts, and thrust, make acceleration grow with rpm squared and velocity with rpm; ratios stay.
     */
    double exponent(Figure.Kind kind, SignalUnit unit) {
        if (this == GAIN_FREE || kind != Figure.Kind.AMPLITUDE) {
            return 0;
        }
        return unit.quantity() == SignalUnit.Quantity.VELOCITY ? 1 : 2;
    }

    /**
     * Standard deviation taken for that exponent: mounts, resonances and, for sound, the steep growth of
     * tip noise make it uncertain. Common practice, no source.
     */
    double exponentError() {
        return this == GAIN_FREE ? 3 : 1;
    }
}
