package evenblade.judge.tracking;

import evenblade.base.units.Length;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;

/**
 * An invented hub with known truth, for tests: blades and positions with their shares, marked with a pencil of known
 * scatter.
 */
final class SwapTest {
    static final Instant START = Instant.parse("2026-03-01T08:00:00Z");

    private final double[] positionMm;
    private final double[] bladeMm;
    private final double sigmaMm;
    private final Random random;
    private final List<TrackingSession> sessions = new ArrayList<>();

    private SwapTest(double[] positionMm, double[] bladeMm, double sigmaMm, Random random) {
        this.positionMm = positionMm;
        this.bladeMm = bladeMm;
        this.sigmaMm = sigmaMm;
        this.random = random;
    }

    static SwapTest even(int blades, double sigmaMm, long seed) {
        return new SwapTest(new double[blades], new double[blades], sigmaMm, mixed(seed));
    }

    /** Neighbouring seeds of Random begin alike; mixed, they don't. */
    static Random mixed(long seed) {
        return new Random(new SplittableRandom(seed).nextLong());
    }

    SwapTest withBlade(int blade, double offMm) {
        bladeMm[blade] = offMm;
        return this;
    }

    SwapTest withPosition(int position, double offMm) {
        positionMm[position] = offMm;
        return this;
    }

    /** Marks the tips in a layout given as blade indices by position. */
    SwapTest marked(int repeats, int... layout) {
        List<String> names = new ArrayList<>();
        List<List<Length>> readings = new ArrayList<>();
        double zero = 3 * random.nextGaussian();
        for (int p = 0; p < layout.length; p++) {
            names.add(name(layout[p]));
            List<Length> marks = new ArrayList<>();
            for (int r = 0; r < repeats; r++) {
                marks.add(Length.ofMillimetres(
                        zero + positionMm[p] + bladeMm[layout[p]] + sigmaMm * random.nextGaussian()));
            }
            readings.add(marks);
        }
        sessions.add(new TrackingSession(
                START.plusSeconds(3600L * sessions.size()),
                new Layout(names),
                readings,
                Length.ofMillimetres(sigmaMm > 0 ? sigmaMm : 0.4)));
        return this;
    }

    /** Blade A on position 1, B on 2, and so on; then everything moved on by so many positions. */
    SwapTest turnedOn(int by) {
        int[] layout = new int[bladeMm.length];
        for (int p = 0; p < layout.length; p++) {
            layout[p] = Math.floorMod(p - by, layout.length);
        }
        return marked(1, layout);
    }

    SwapTest shuffled() {
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < bladeMm.length; i++) {
            order.add(i);
        }
        Collections.shuffle(order, random);
        return marked(1, order.stream().mapToInt(Integer::intValue).toArray());
    }

    static String name(int blade) {
        return String.valueOf((char) ('A' + blade));
    }

    List<TrackingSession> sessions() {
        return List.copyOf(sessions);
    }

    SwapFit fit() {
        return SwapFit.of(sessions);
    }

    /** Each blade's true share, less their mean. */
    double trueBladeDeviationMm(int blade) {
        return bladeMm[blade] - mean(bladeMm);
    }

    double truePositionDeviationMm(int position) {
        return positionMm[position] - mean(positionMm);
    }

    /** True spread of the tips in a layout. */
    double trueSpreadMm(Layout layout) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int p = 0; p < positionMm.length; p++) {
            double track = positionMm[p] + bladeMm[layout.blades().get(p).charAt(0) - 'A'];
            low = Math.min(low, track);
            high = Math.max(high, track);
        }
        return high - low;
    }

    private static double mean(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum / values.length;
    }
}
