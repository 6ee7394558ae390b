package evenblade.judge.tracking;

/**
 * An estimated length or difference of lengths with its error.
 *
 * @param valueMm estimate in mm
 * @param standardErrorMm its standard error in mm
 * @param lowMm lower end of the 95 % interval
 * @param highMm upper end of the 95 % interval
 */
public record Estimate(double valueMm, double standardErrorMm, double lowMm, double highMm) {
    static Estimate of(double valueMm, double standardErrorMm, double quantile) {
        return new Estimate(
                valueMm, standardErrorMm, valueMm - quantile * standardErrorMm, valueMm + quantile * standardErrorMm);
    }
}
