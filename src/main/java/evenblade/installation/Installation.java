package evenblade.installation;

import evenblade.units.Length;
import java.util.List;
import java.util.Optional;

/**
 * Engine, drive and propeller as they stand on the aircraft.
 *
 * @param name free text, where given
 * @param limits entered limits, each with its statistic and source; may be empty
 */
public record Installation(
        Optional<String> name, Engine engine, Reduction reduction, Propeller propeller, List<Limit> limits) {
    public Installation {
        limits = List.copyOf(limits);
    }

    /**
     * The propeller.
     *
     * @param blades number of blades, 2 or more
     * @param diameter tip circle, where given
     * @param rotation seen from behind the propeller, where given
     */
    public record Propeller(int blades, Optional<Length> diameter, Optional<Rotation> rotation) {}

    /** Sense of rotation. */
    public enum Rotation {
        CLOCKWISE("clockwise"),
        COUNTER_CLOCKWISE("counter-clockwise");

        private final String word;

        Rotation(String word) {
            this.word = word;
        }

        /** As written in installation files. */
        public String word() {
            return word;
        }
    }

    /** The lines this installation can show. */
    public OrderTable orders() {
        return OrderTable.of(this);
    }
}
