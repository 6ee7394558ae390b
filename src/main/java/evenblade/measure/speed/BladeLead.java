package evenblade.measure.speed;

import evenblade.machine.installation.OrderTable;
import evenblade.machine.installation.Shaft;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/**
 * Whose multiples lead among the propeller's orders at a known speed. Blades that are nearly alike push alike: what they
 * do together is blade pass and its multiples, and the orders between show only by how much they differ. Where the orders of
 * another blade count tower over those between them, the entered one has its blade pass among what should be small.
 *
 * <p>Orders on which a line of the engine or mains hum lies say nothing here.
 */
final class BladeLead {
    /** By so much the first multiple leads all orders between: 6 dB, as a logarithm of power. */
    private static final double LEAD = 1.4;
    /** The second multiple leads the orders beside it by half of that: a resonance lifts one order, not both. */
    private static final double SECOND_LEAD = 0.7;

    /** A multiple of the blade pass entered leads it by 15 dB where that one is weak and a resonance helps; by 18 it isn't one. */
    private static final double MULTIPLE_LEAD = 4.2;

    private static final int FEWEST_BLADES = 2; // as an installation file may say
    private static final int MOST_BLADES = 8; // ours: more is rare
    /** Resolutions within which a Hann window lets a neighbour's main lobe through. */
    private static final double LOBE = 2;

    private final WhitenedLines spectrum;
    private final OrderTable table;
    private final double hz;

    private BladeLead(WhitenedLines spectrum, OrderTable table, double hz) {
        this.spectrum = spectrum;
        this.table = table;
        this.hz = hz;
    }

    /**
     * The blade count whose multiples lead, where that isn't the one entered.
     *
     * @param spectrum of a stretch, along its path
     * @param hz the propeller's speed in it
     */
    static OptionalInt other(WhitenedLines spectrum, OrderTable table, double hz) {
        BladeLead lead = new BladeLead(spectrum, table, hz);
        return lead.readable(table.blades()) && !lead.enteredLeads()
                ? IntStream.rangeClosed(FEWEST_BLADES, MOST_BLADES)
                        .filter(blades -> blades != table.blades() && lead.leads(blades))
                        .reduce(lead::likelier)
                : OptionalInt.empty();
    }

    /**
     * Of two counts whose multiples lead the smaller, unless the larger one's blade pass leads the smaller's by twice as
     * much: a double may be lifted by a resonance, and pairs of blades that differ show at half of blade pass.
     */
    private int likelier(int smaller, int larger) {
        return level(larger) > level(smaller) + 2 * LEAD ? larger : smaller;
    }

    /** Whether a double that is stronger stands while the third multiple is missing: then it is half of blade pass. */
    private boolean isHalf(int blades) {
        int third = 3 * blades;
        return level(2 * blades) > level(blades) && readable(third) && !spectrum.stands(third * hz);
    }

    /** A double of blade pass may be much stronger than blade pass itself; that one still leads what lies between. */
    private boolean enteredLeads() {
        return spectrum.stands(table.blades() * hz) && level(table.blades()) > between(table.blades()) + LEAD;
    }

    /** The strongest order from the second to the one after the double of blade pass that is no multiple of it. */
    private double between(int blades) {
        return IntStream.rangeClosed(2, 2 * blades + 1)
                .filter(k -> k % blades != 0)
                .filter(this::readable)
                .mapToDouble(this::level)
                .max()
                .orElse(0);
    }

    private boolean leads(int blades) {
        if (!standsAlone(blades) || !standsAlone(2 * blades) || isHalf(blades)) {
            return false;
        }
        double beside = IntStream.of(2 * blades - 1, 2 * blades + 1)
                .filter(this::readable)
                .mapToDouble(this::level)
                .max()
                .orElse(0);
        double entered = level(table.blades()) + (blades % table.blades() == 0 ? MULTIPLE_LEAD : LEAD);
        return level(blades) > Math.max(between(blades) + LEAD, entered) && level(2 * blades) > beside + SECOND_LEAD;
    }

    private boolean standsAlone(int order) {
        return readable(order) && spectrum.stands(order * hz);
    }

    private double level(int order) {
        return WhitenedSpectrogram.level(spectrum.evidence(order * hz));
    }

    /** Whether it lies in range and neither mains hum nor a line of the engine hides it. */
    private boolean readable(int order) {
        double reach = LOBE * spectrum.resolutionHz();
        return order * hz > spectrum.lowestHz()
                && order * hz < spectrum.highestHz()
                && !spectrum.takenOut(order * hz)
                && table.lines().stream()
                        .filter(line -> line.of() == Shaft.CRANK)
                        .noneMatch(line -> Math.abs(line.propellerOrder() - order) * hz < reach);
    }
}
