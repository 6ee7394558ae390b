package evenblade.judge.comparison;

import evenblade.base.fact.Worded;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.Shaft;
import java.util.Optional;

/**
 * One number of a dwell that can be held against the same number of another run.
 *
 * @param kind what is measured
 * @param line whose amplitude it is made of; empty for the unevenness index
 * @param nature what makes it come and go from run to run
 */
public record Figure(Kind kind, Optional<OrderLine> line, Nature nature) {
    /** The unevenness index. */
    public static final Figure UNEVENNESS = new Figure(Kind.UNEVENNESS, Optional.empty(), Nature.RATIO);

    /** What is measured. */
    public enum Kind implements Worded {
        /** The peak value of a line, in the channel's unit. */
        AMPLITUDE,
        /** The amplitude of a propeller order over that of blade pass: no gain can change it. */
        TO_BLADE_PASS,
        /** Uneven over even propeller orders: no gain can change it. */
        UNEVENNESS
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
        return new Figure(Kind.AMPLITUDE, Optional.of(line), nature);
    }

    /** The amplitude of a propeller order over that of blade pass. */
    static Figure toBladePass(OrderLine line) {
        return new Figure(Kind.TO_BLADE_PASS, Optional.of(line), Nature.RATIO);
    }

    /** The shaft the order is counted on; empty for the unevenness index. */
    public Optional<Shaft> of() {
        return line.map(OrderLine::of);
    }

    /** Multiple of that shaft's speed; 0 for the unevenness index. */
    public double order() {
        return line.map(OrderLine::order).orElse(0.0);
    }

    /** What a technician calls it. */
    public String name() {
        return switch (kind) {
            case AMPLITUDE -> line.orElseThrow().name();
            case TO_BLADE_PASS -> line.orElseThrow().name() + " / blade pass";
            case UNEVENNESS -> "unevenness";
        };
    }

    /** Whether it is one of the few that tell most: propeller 1×, blade pass, what of 1× no gain changes. */
    public boolean tellsMost() {
        return kind == Kind.UNEVENNESS
                || line.filter(OrderLine::propellerOnce).isPresent()
                || kind == Kind.AMPLITUDE && line.orElseThrow().bladePass();
    }
}
