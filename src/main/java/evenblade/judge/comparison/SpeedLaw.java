package evenblade.judge.comparison;

import evenblade.base.units.SignalUnit;

/**
 * What a small difference in speed does to the logarithm of a figure.
 *
 * @param shift by which the second figure is larger for being measured at its own speed
 * @param reach half the width of the 95 % interval of that shift
 */
record SpeedLaw(double shift, double reach) {
    private static final double NORMAL_95 = 1.959963984540054; // Φ⁻¹(0.975)

    /**
     * The law for two dwells.
     *
     * @param speedStep natural logarithm of how much faster the second dwell was
     */
    static SpeedLaw between(double speedStep, Basis basis, Figure.Kind kind, SignalUnit unit) {
        return new SpeedLaw(
                basis.exponent(kind, unit) * speedStep, NORMAL_95 * basis.exponentError() * Math.abs(speedStep));
    }
}
