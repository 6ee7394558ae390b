package evenblade.rig;

import java.util.List;
import java.util.SplittableRandom;

/** Chance with an explicit seed. Two dice of one seed fall alike; {@link #fork} gives an independent one by a number. */
final class Dice {
    private final long seed;
    private final SplittableRandom random;

    Dice(long seed) {
        this.seed = seed;
        this.random = new SplittableRandom(seed * 0x9E3779B97F4A7C15L + 0x5851F42D4C957F2DL);
        random.nextLong();
    }

    /** Independent dice that depend on the seed and the number only, not on what was thrown before. */
    Dice fork(long number) {
        return new Dice((seed + 1) * 1_000_003L + number * 7_919L);
    }

    double uniform(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    /** Uniform in the logarithm: as many values between 1 and 2 as between 2 and 4. */
    double logUniform(double low, double high) {
        return Math.exp(uniform(Math.log(low), Math.log(high)));
    }

    /** Standard normal, by the polar method of Box and Muller. */
    double normal() {
        double u = 1 - random.nextDouble();
        return Math.sqrt(-2 * Math.log(u)) * Math.cos(2 * Math.PI * random.nextDouble());
    }

    boolean chance(double probability) {
        return random.nextDouble() < probability;
    }

    int between(int low, int high) {
        return low + random.nextInt(high - low + 1);
    }

    <T> T pick(List<T> choices) {
        return choices.get(random.nextInt(choices.size()));
    }

    double angle() {
        return uniform(0, 2 * Math.PI);
    }
}
