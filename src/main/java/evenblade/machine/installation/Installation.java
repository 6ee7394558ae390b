package evenblade.machine.installation;

import evenblade.base.fact.Worded;
import evenblade.base.units.Length;
import evenblade.base.units.Mass;
import evenblade.machine.installation.Limit.PitchLimit;
import java.util.List;
import java.util.Optional;

/**
 * Engine, drive and propeller as they stand on the aircraft.
 *
 * @param name free text, where given
 * @param limits entered limits on lengths, each with its statistic and source; may be empty
 * @param pitchLimits entered limits on blade angles, likewise
 * @param hubWeights where balance weights may go
 * @param sensor where the sensor sits
 */
public record Installation(
        Optional<String> name,
        Engine engine,
        Reduction reduction,
        Propeller propeller,
        List<Limit> limits,
        List<PitchLimit> pitchLimits,
        HubWeights hubWeights,
        SensorPlace sensor) {
    public Installation {
        limits = List.copyOf(limits);
        pitchLimits = List.copyOf(pitchLimits);
    }

    /** An installation of which nothing is known about balance weights. */
    public Installation(
            Optional<String> name,
            Engine engine,
            Reduction reduction,
            Propeller propeller,
            List<Limit> limits,
            List<PitchLimit> pitchLimits) {
        this(name, engine, reduction, propeller, limits, pitchLimits, HubWeights.NONE, SensorPlace.NONE);
    }

    /** An installation without limits on blade angles. */
    public Installation(
            Optional<String> name, Engine engine, Reduction reduction, Propeller propeller, List<Limit> limits) {
        this(name, engine, reduction, propeller, limits, List.of());
    }

    /**
     * The propeller.
     *
     * @param blades number of blades, {@link #LEAST_BLADES} to {@link #MOST_BLADES}
     * @param diameter tip circle, where given
     * @param rotation seen from behind the propeller, where given
     * @param bladeMass of one blade, where given
     * @param centreOfGravity of one blade: its distance from the shaft's axis, where given
     * @param chord mean width of a blade, where given
     * @param positionsCounted in which sense the hub positions are numbered, where given
     */
    public record Propeller(
            int blades,
            Optional<Length> diameter,
            Optional<Rotation> rotation,
            Optional<Mass> bladeMass,
            Optional<Length> centreOfGravity,
            Optional<Length> chord,
            Optional<HubCounting> positionsCounted) {
        public static final int LEAST_BLADES = 2; // a single blade's comb would need other rules
        public static final int MOST_BLADES = 12; // more than any such propeller; a mistyped number shows

        /** A propeller whose blades' width and whose hub's numbering aren't given. */
        public Propeller(
                int blades,
                Optional<Length> diameter,
                Optional<Rotation> rotation,
                Optional<Mass> bladeMass,
                Optional<Length> centreOfGravity) {
            this(blades, diameter, rotation, bladeMass, centreOfGravity, Optional.empty(), Optional.empty());
        }

        /** A propeller whose blades' masses aren't known. */
        public Propeller(int blades, Optional<Length> diameter, Optional<Rotation> rotation) {
            this(blades, diameter, rotation, Optional.empty(), Optional.empty());
        }
    }

    /** Sense of rotation. */
    public enum Rotation implements Worded {
        CLOCKWISE,
        COUNTER_CLOCKWISE
    }

    /** The sense in which hub positions are numbered: as given, else {@link HubCounting#USUAL}. */
    public HubCounting hubCounting() {
        return propeller.positionsCounted().orElse(HubCounting.USUAL);
    }

    /** The lines this installation can show. */
    public OrderTable orders() {
        return OrderTable.of(this);
    }
}
