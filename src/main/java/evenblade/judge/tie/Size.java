package evenblade.judge.tie;

/**
 * Size of a complex quantity, with its 95 % interval.
 *
 * @param value estimate, 0 or more
 * @param low lower end, 0 where it can't be told from nothing
 * @param high upper end
 */
public record Size(double value, double low, double high) {}
