package evenblade.base.fact;

import java.time.Instant;

/**
 * A point in time.
 *
 * @param instant when
 */
public record Moment(Instant instant) implements Value {}
