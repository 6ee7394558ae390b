package evenblade.judge.comparison;

import evenblade.base.numeric.Distributions;
import evenblade.machine.installation.Shaft;
import java.util.Collection;
import java.util.List;

/**
 * What a sensor that was taken off and put back does to all lines of a run alike. A correction to the propeller doesn't
 * touch what the engine makes by itself, so that the engine's lines show it.
 *
 * <p>Before any line is looked at it is 0 ± {@value #SEATED_ANEW} (standard deviation of the logarithm). Each engine line's
 * own step l with variance v adds to that: {@code shift = (Σ l/v) / (1/s₀² + Σ 1/v)}, {@code deviation² = 1/(1/s₀² + Σ 1/v)}.
 * Where the engine's lines contradict each other, none is believed, and nothing is taken out.
 *
 * @param shift natural logarithm of the factor
 * @param deviation standard deviation of it
 */
record CommonPart(double shift, double deviation) {
    /** Where no seat of a sensor matters: ratios within one run. */
    static final CommonPart NONE = new CommonPart(0, 0);

    /** Usual between two sessions; common practice, no source. */
    static final double SEATED_ANEW = 0.06;

    private static final double NORMAL_95 = 1.959963984540054; // Φ⁻¹(0.975)
    /** Engine lines that agree no better than this by chance contradict each other. */
    private static final double CONTRADICT = 0.99;
    /** So many that agree are believed even beyond what is usual. */
    private static final int BELIEVED = 3;

    /** One figure in both runs. */
    record Step(Figure figure, ComparedValue before, ComparedValue after, SpeedLaw law, Scatter scatter) {
        double logarithm() {
            return Math.log(after.size() / before.size()) - law.shift();
        }

        double within() {
            return Math.hypot(reach(before), reach(after));
        }

        private double variance() {
            double reach = Math.hypot(scatter.with(within(), 2), law.reach()) / NORMAL_95;
            // Not better than a hundredth of a per cent, else one exact line would rule all others.
            return Math.max(1e-8, reach * reach);
        }

        private boolean ofEngine() {
            return figure.kind() == Figure.Kind.AMPLITUDE
                    && figure.of().filter(shaft -> shaft == Shaft.CRANK).isPresent()
                    && before instanceof ComparedValue.Known
                    && after instanceof ComparedValue.Known;
        }

        private static double reach(ComparedValue value) {
            return value instanceof ComparedValue.Known known ? known.reach() : 0;
        }
    }

    /**
     * For one figure, from the other figures of the same two dwells.
     *
     * @param figure which
     * @param steps what stands apart from all other lines in both
     */
    static CommonPart in(Figure figure, Collection<Step> steps) {
        if (figure.kind() != Figure.Kind.AMPLITUDE) {
            return NONE;
        }
        List<Step> engine = steps.stream()
                .filter(step -> step.ofEngine() && !step.figure().equals(figure))
                .toList();
        double prior = 1 / (SEATED_ANEW * SEATED_ANEW);
        double weight = prior;
        double sum = 0;
        for (Step step : engine) {
            weight += 1 / step.variance();
            sum += step.logarithm() / step.variance();
        }
        double shift = sum / weight;
        double squares = engine.size() < BELIEVED ? shift * shift * prior : 0;
        for (Step step : engine) {
            squares += Math.pow(step.logarithm() - shift, 2) / step.variance();
        }
        boolean agree = engine.isEmpty() || Distributions.chiSquareBelow(squares, engine.size()) < CONTRADICT;
        return agree ? new CommonPart(shift, 1 / Math.sqrt(weight)) : new CommonPart(0, SEATED_ANEW);
    }

    /** Half the width of the 95 % interval of the logarithm. */
    double reach() {
        return NORMAL_95 * deviation;
    }
}
