package evenblade.base.numeric;

/**
 * An F-test: whether a part of a model explains more than scatter would.
 *
 * @param statistic mean square of the part over the variance of the scatter
 * @param numerator degrees of freedom of the part
 * @param denominator degrees of freedom of the scatter
 * @param pValue probability of so large a statistic if the part meant nothing
 */
public record FTest(double statistic, double numerator, double denominator, double pValue) {
    /**
     * Tests a sum of squares.
     *
     * @param sumOfSquares what the part takes out of the residual sum of squares
     * @param numerator degrees of freedom of the part, above 0
     * @param variance variance of the scatter, above 0
     * @param denominator degrees of freedom of that variance, above 0
     */
    public static FTest of(double sumOfSquares, double numerator, double variance, double denominator) {
        double f = Math.max(0, sumOfSquares) / numerator / variance;
        return new FTest(f, numerator, denominator, Distributions.fTail(f, numerator, denominator));
    }
}
