package evenblade.base.numeric;

/** The least squares fit of observations to a {@link LinearDesign}. */
public final class LinearFit {
    private final LinearDesign design;
    private final double[] beta;
    private final double[] residuals;

    LinearFit(LinearDesign design, double[] beta, double[] residuals) {
        this.design = design;
        this.beta = beta;
        this.residuals = residuals;
    }

    /** The design that was fitted. */
    public LinearDesign design() {
        return design;
    }

    /**
     * Estimate of Σ cⱼβⱼ, in the unit of the observations.
     *
     * @throws IllegalArgumentException if the design can't estimate that combination
     */
    public double estimate(double[] combination) {
        design.requireEstimable(combination);
        return LinearDesign.dot(combination, beta);
    }

    /**
     * One of the parameters by itself.
     *
     * @throws IllegalArgumentException if the design can't estimate it by itself
     */
    public double parameter(int index) {
        double[] unit = new double[beta.length];
        unit[index] = 1;
        return estimate(unit);
    }

    /** Sum of the squared residuals. */
    public double residualSumOfSquares() {
        return LinearDesign.dot(residuals, residuals);
    }

    /** Observations less rank. */
    public int degreesOfFreedom() {
        return design.observations() - design.rank();
    }
}
