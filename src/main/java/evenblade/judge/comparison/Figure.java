package evenblade.judge.comparison;

import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.Shaft;
import java.util.Optional;

/**
 * One number of a dwell that can be held against the same number of another run.
 *
 * @param kind what is measured
 * @param of the shaft the order is counted on; empty for the unevenness index
 * @param order multiple of that shaft's speed; 0 for the unevenness index
 * @param name what a technician calls it
 * @param nature what makes it come and go from run to run
 */
public record Figure(Kind kind, Optional<Shaft> of, double order, String name, Nature nature) {
    /** The unevenness index. */
    public static final Figure UNEVENNESS =
            new Figure(Kind.UNEVENNESS, Optional.empty(), 0, "unevenness", Nature.RATIO);

    /** What is measured. */
    public enum Kind {
        /** The peak value of a line, in the channel's unit. */
        AMPLITUDE("amplitude"),
        /** The amplitude of a propeller order over that of blade pass: no gain can change it. */
        TO_BLADE_PASS("to-blade-pass"),
        /** Uneven over even propeller orders: no gain can change it. */
        UNEVENNESS("unevenness");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        /** As written in JSON. */
        public String word() {
            return word;
        }
    }

    /** What makes a figure come and go between runs of an unchanged machine. */
    public enum Nature {
        /** Turning mass: repeats best. */
        TURNING,
        /** Air on the blades and gas in the cylinders: wind, density, throttle and fuel change it. */
        LOADED,
        /** A ratio of the two. */
        RATIO
    }

    /** The amplitude of a line. */
    static Figure amplitude(OrderLine line) {
        Nature nature =
                switch (line.role()) {
                    case UNEVEN_PROPELLER, CRANK, HALF_CRANK -> Nature.TURNING;
                    case BLADE_PASS, FIRING, MESH -> Nature.LOADED;
                };
        return new Figure(Kind.AMPLITUDE, Optional.of(line.of()), line.order(), line.name(), nature);
    }

    /** The amplitude of a propeller order over that of blade pass. */
    static Figure toBladePass(OrderLine line) {
        return new Figure(
                Kind.TO_BLADE_PASS, Optional.of(line.of()), line.order(), line.name() + " / blade pass", Nature.RATIO);
    }
}
