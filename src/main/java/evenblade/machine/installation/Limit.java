package evenblade.machine.installation;

import evenblade.base.fact.Code;
import evenblade.base.units.Angle;
import evenblade.base.units.Length;

/**
 * A limit on a length, with the statistic it is meant for and where it comes from. Never law: the
 * maker's figure rules. Limits on blade angles are {@link PitchLimit}s.
 *
 * @param what what is limited
 * @param statistic how the readings are turned into the number that is held against it
 * @param value the limit
 * @param source who says so, as entered
 */
public record Limit(Subject what, Statistic statistic, Length value, String source) {
    /** What a limit is about. */
    public enum Subject {
        /** Tip marks of the blades. */
        TRACK,
        /** Total indicator reading on the flange face: always {@link Statistic#SPREAD}. */
        FACE_RUN_OUT
    }

    /** The number made from the readings that a limit is held against. */
    public enum Statistic implements Code {
        /** Largest minus smallest. */
        SPREAD,
        /** Largest distance from the middle between largest and smallest. */
        ABOUT_MIDDLE,
        /** Largest distance from the mean. */
        ABOUT_MEAN,
        /** Largest difference between a blade and the one opposite. */
        OPPOSITE_BLADE
    }

    /**
     * A limit on blade angles, all read at the same station, with its statistic and source. Never law:
     * the maker's figure rules.
     *
     * @param statistic how the readings are turned into the number that is held against it
     * @param value the limit
     * @param source who says so, as entered
     */
    public record PitchLimit(Limit.Statistic statistic, Angle value, String source) {}
}
