package evenblade.measure.speed;

import java.util.Arrays;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;

/**
 * Whether a series of multiples stands in a recording that this machine's lines don't explain: another machine runs. Held
 * against series whose multiples are moved by themselves, in the same recording.
 */
final class OtherMachine {
    private static final int MULTIPLES = 8; // ours: what a comb is told by
    /** Slowest and fastest first line looked for, hertz: from a large rotor to a small saw. */
    private static final double FROM_HZ = 8;

    private static final double TO_HZ = 250; // ours: combs lie below
    /** A series of less isn't called one: in full lines. */
    private static final double LEAST = 2.2;

    private static final int SCRAMBLED = 100; // combs with shifted teeth, to see what chance makes
    private static final double SCRAMBLED_BY = 0.12; // in logarithm; ours: further than a tooth is wide
    private static final double CHANCE = 0.01; // the usual 1 %

    private OtherMachine() {}

    /**
     * @param spectrum of a stretch, without hum and without this machine's own lines
     * @return empty where there is nothing to look at
     */
    static Optional<Boolean> in(WhitenedLines spectrum) {
        double[] orders = IntStream.rangeClosed(1, MULTIPLES).asDoubleStream().toArray();
        double most = most(spectrum, orders);
        if (most < LEAST) {
            return Optional.of(false);
        }
        Random random = new Random(MULTIPLES);
        int asGood = 0;
        for (int s = 0; s < SCRAMBLED; s++) {
            double[] moved = Arrays.stream(orders)
                    .map(o -> o * Math.exp(SCRAMBLED_BY * (2 * random.nextDouble() - 1)))
                    .toArray();
            asGood += most(spectrum, moved) >= most ? 1 : 0;
        }
        return Optional.of(asGood <= CHANCE * SCRAMBLED);
    }

    private static double most(WhitenedLines spectrum, double[] orders) {
        double[] weights = new double[orders.length];
        Arrays.fill(weights, 1);
        CombScore score = new CombScore(spectrum, orders, weights, FROM_HZ, TO_HZ);
        return IntStream.range(0, score.size()).mapToDouble(score::at).max().orElse(0);
    }
}
