package evenblade.judge.tracking;

import java.util.Optional;

/**
 * How far a blade, or a hub position, puts the tip off the mean of all blades, or of all positions.
 *
 * @param name the blade, or the position's number
 * @param estimate the deviation; nothing where the layouts tried so far can't tell it
 */
public record Deviation(String name, Optional<Estimate> estimate) {}
