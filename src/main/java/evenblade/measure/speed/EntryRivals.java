package evenblade.measure.speed;

import evenblade.machine.installation.OrderTable;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Whether another blade count, or another reduction ratio, explains the lines of a stretch clearly better than what was
 * entered: by {@value #CLEARLY} lines. A blade count goes before a ratio that does as well, for the two look alike.
 */
final class EntryRivals {
    /** In full lines: a main line and a half, for a ratio; all ratios are tried. */
    private static final double CLEARLY = 1.8;
    /** For a blade count and the ratio upside down, of which there are few. */
    private static final double CLEARLY_OF_FEW = 1.0;
    /** A rival explains so much at least, whatever the entry does: rooms come to less. */
    private static final double LEAST = 4;
    /** Ratios looked at lie within this of the entered one, in logarithm; and the entered one upside down. */
    private static final double REACH = 0.9;
    /** Ratios nearer than this to each other are one. */
    private static final double SAME = 0.012;
    /** Share of all other ratios that may do as well as the best: else no ratio is better than another. */
    private static final double CHANCE = 0.03;

    private static final int NEIGHBOURS = 4; // steps that make up SAME
    private static final double AS_WELL = 0.4; // ours, in the score's unit
    private static final int FEWEST_BLADES = 2; // as an installation file may say
    private static final int MOST_BLADES = 8; // ours: more is rare
    private static final int HIGHEST_MULTIPLE = 4; // ours

    private final double[] crank;
    private final CombScore crankGrid;

    private EntryRivals(double[] crank, CombScore crankGrid) {
        this.crank = crank;
        this.crankGrid = crankGrid;
    }

    /**
     * @param crank credit of the crank's lines with what an entered speed adds, by speed of the crank
     * @param crankGrid those speeds
     * @param propeller credit of the propeller's lines
     * @param entered what the entry comes to
     * @param at the place where it does, on the crank's grid
     */
    static Optional<BetterEntry> of(
            WhitenedLines spectrum,
            OrderTable table,
            Comb comb,
            SpeedPrior prior,
            double[] crank,
            CombScore crankGrid,
            CombScore propeller,
            double entered,
            int at) {
        EntryRivals rivals = new EntryRivals(crank, crankGrid);
        double ratio = table.ratio();
        double ofFew = Math.max(LEAST, entered + CLEARLY_OF_FEW);
        double over = rivals.best(
                propellerOf(table.blades(), spectrum, prior.fromHz() * ratio * ratio, prior.toHz() * ratio * ratio),
                1 / ratio);
        if (Math.abs(Math.log(ratio)) > SAME && over > ofFew) {
            return Optional.of(BetterEntry.ratio(1 / ratio));
        }
        double[] ofBlades = new double[MOST_BLADES + 1];
        for (int b = FEWEST_BLADES; b <= MOST_BLADES; b++) {
            ofBlades[b] = rivals.best(propellerOf(b, spectrum, prior.fromHz(), prior.toHz()), ratio);
        }
        double most = Arrays.stream(ofBlades).max().orElse(0);
        int blades = FEWEST_BLADES;
        while (ofBlades[blades] < most - AS_WELL) {
            blades++;
        }
        boolean other = most > ofFew && most > ofBlades[Math.min(MOST_BLADES, table.blades())] + CLEARLY_OF_FEW;
        double least = Math.max(Math.max(LEAST, entered + CLEARLY), other ? most + AS_WELL : 0);
        double better = rivals.ratio(propeller, ratio, least, comb);
        if (better > 0) {
            return Optional.of(BetterEntry.ratio(better));
        }
        if (!other || blades == table.blades()) {
            return Optional.empty();
        }
        int rival = rivals.place(propellerOf(blades, spectrum, prior.fromHz(), prior.toHz()), ratio);
        boolean sameSpeed = Math.abs(rival - at) * WhitenedLines.STEP < SAME;
        return Optional.of(BetterEntry.blades(blades, sameSpeed));
    }

    private static CombScore propellerOf(int blades, WhitenedLines spectrum, double fromHz, double toHz) {
        double[] orders = IntStream.rangeClosed(1, HIGHEST_MULTIPLE * blades)
                .filter(k -> k <= 2 * blades || k % blades == 0)
                .asDoubleStream()
                .toArray();
        double[] weights = Arrays.stream(orders)
                .map(k -> k % blades == 0 ? Comb.ofMultiple(k / blades) : k == 1 ? 0.9 : 0.5)
                .toArray();
        return new CombScore(spectrum, orders, weights, fromHz, toHz);
    }

    /** The most that a ratio comes to, at its best speed. */
    private double best(CombScore propeller, double ratio) {
        int place = place(propeller, ratio);
        return crank[place] + propeller.atOrNone(place + propeller.shift(crankGrid, ratio));
    }

    /** Where it does. */
    private int place(CombScore propeller, double ratio) {
        int shift = propeller.shift(crankGrid, ratio);
        int best = 0;
        for (int i = 0; i < crank.length; i++) {
            if (crank[i] + propeller.atOrNone(i + shift) > crank[best] + propeller.atOrNone(best + shift)) {
                best = i;
            }
        }
        return best;
    }

    /**
     * The peak that does nearly as well as the best and lies nearest to what was entered: half and twice a ratio explain nearly the
     * same lines, and nobody miscounts teeth by half.
     */
    private static int nearest(double[] value, int best) {
        int middle = value.length / 2;
        int nearest = best;
        for (int i = NEIGHBOURS; i < value.length - NEIGHBOURS; i++) {
            boolean peak = value[i] > value[best] - 2 * AS_WELL;
            for (int j = i - NEIGHBOURS; j <= i + NEIGHBOURS; j++) {
                peak &= value[j] <= value[i];
            }
            if (peak && Math.abs(i - middle) < Math.abs(nearest - middle)) {
                nearest = i;
            }
        }
        return nearest;
    }

    /** The ratio that does best, where it does better than {@code least} and hardly any other does; else 0. */
    private double ratio(CombScore propeller, double entered, double least, Comb comb) {
        int reach = (int) (REACH / SAME * 4);
        double[] value = new double[2 * reach + 1];
        int at = 0;
        for (int i = 0; i < value.length; i++) {
            double ratio = entered * Math.exp((i - reach) * SAME / 4);
            value[i] = best(propeller, ratio) - comb.countedTwice(entered, ratio);
            at = value[i] > value[at] ? i : at;
        }
        int nearest = nearest(value, at);
        double found = entered * Math.exp((nearest - reach) * SAME / 4);
        int asGood = 0;
        for (int i = 0; i < value.length; i++) {
            asGood += Math.abs(i - at) > NEIGHBOURS && value[i] > value[at] - AS_WELL ? 1 : 0;
        }
        boolean alone = asGood < CHANCE * value.length;
        return value[at] > least && alone && Math.abs(Math.log(found / entered)) > SAME ? found : 0;
    }
}
