package evenblade.judge.balance;

import evenblade.base.numeric.LinearDesign;
import evenblade.base.numeric.LinearFit;
import evenblade.base.numeric.Phasor;
import java.util.List;
import java.util.Optional;

/**
 * Test masses on knife edges or a spindle: each place in turn is brought level with the shaft and loaded until it just
 * turns. M(θ) = F + Cx·cos θ + Cy·sin θ in g·mm, by least squares: F is the friction, C the correction, on the light side.
 *
 * <p>The part along 0° is balance with the blade at 0° level (horizontal), the part along 90° with it upright (vertical);
 * they are told separately.
 *
 * @param correction what would make it turn alike everywhere
 * @param frictionGmm F
 * @param errorAlongGmm standard error of the part along 0°
 * @param errorAcrossGmm standard error of the part along 90°
 */
public record BenchReadings(Unbalance correction, double frictionGmm, double errorAlongGmm, double errorAcrossGmm) {
    private static final int UNKNOWNS = 3; // two parts of the unbalance and the sensitivity
    /** Standard deviations by which a part has to stand out. */
    private static final double SEEN = 2;

    /**
     * Reckons.
     *
     * @param tests the mass that just turned each place; three or more places
     * @param stepGmm standard error of one test: the step of the test masses; more tests than three show their own
     * @return nothing where the places are too few or too alike
     */
    public static Optional<BenchReadings> of(List<Weight> tests, double stepGmm) {
        if (tests.size() < UNKNOWNS) {
            return Optional.empty();
        }
        double[][] rows = tests.stream()
                .map(t -> Phasor.ofDegrees(1, t.angleDeg()))
                .map(u -> new double[] {1, u.re(), u.im()})
                .toArray(double[][]::new);
        LinearDesign design = LinearDesign.of(rows);
        if (design.rank() < UNKNOWNS) {
            return Optional.empty();
        }
        LinearFit fit = design.fit(tests.stream().mapToDouble(Weight::gmm).toArray());
        double seen = fit.degreesOfFreedom() > 0 ? Math.sqrt(fit.residualSumOfSquares() / fit.degreesOfFreedom()) : 0;
        double error = Math.max(stepGmm, seen);
        return Optional.of(new BenchReadings(
                new Unbalance(new Phasor(fit.parameter(1), fit.parameter(2))),
                fit.parameter(0),
                error * Math.sqrt(design.varianceFactor(new double[] {0, 1, 0})),
                error * Math.sqrt(design.varianceFactor(new double[] {0, 0, 1}))));
    }

    /** Whether the hub would stay wherever it is put: the unbalance is less than the friction holds. */
    public boolean belowFriction() {
        return correction.gmm() < frictionGmm;
    }

    /** Whether the horizontal part stands out of the errors of the tests. */
    public boolean alongSeen() {
        return Math.abs(correction.vectorGmm().re()) > SEEN * errorAlongGmm;
    }

    /** Whether the vertical part does. */
    public boolean acrossSeen() {
        return Math.abs(correction.vectorGmm().im()) > SEEN * errorAcrossGmm;
    }
}
