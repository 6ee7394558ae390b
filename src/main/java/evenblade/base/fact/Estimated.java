package evenblade.base.fact;

/**
 * A measured number with its 95 % interval.
 *
 * @param value in the unit that {@code measure} names
 * @param low lower end of the interval
 * @param high upper end of the interval
 * @param measure what it measures
 */
public record Estimated(double value, double low, double high, Measure measure) implements Value {}
