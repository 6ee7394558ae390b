package evenblade.judge.tracking;

/**
 * The difference between two blades, or between two hub positions.
 *
 * @param first the blade or position whose share is counted plus
 * @param second the one it is compared with
 * @param difference share of the first less share of the second
 */
public record Contrast(String first, String second, Estimate difference) {}
