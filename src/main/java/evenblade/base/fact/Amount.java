package evenblade.base.fact;

/**
 * A number with what it measures.
 *
 * @param value in the unit that {@code measure} names
 * @param measure what it measures
 */
public record Amount(double value, Measure measure) implements Value {}
