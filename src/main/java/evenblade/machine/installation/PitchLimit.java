package evenblade.machine.installation;

import evenblade.base.units.Angle;

/**
 * A limit on blade angles, all read at the same station, with its statistic and source. Never law:
 * the maker's figure rules.
 *
 * @param statistic how the readings are turned into the number that is held against it
 * @param value the limit
 * @param source who says so, as entered
 */
public record PitchLimit(Limit.Statistic statistic, Angle value, String source) {}
