package evenblade.rig;

import java.util.List;
import java.util.SplittableRandom;

/** Chance with an explicit seed. Two dice of one seed fall alike; {@link #fork} gives an independent one by a number. */
final class Dice {
    private final long seed;
    private final SplittableRandom random;

    Dice(long seed) {
        this.seed = seed;
        this.random = new SplittableRandom(mix(seed));
    }

    /** Scatters seeds that lie close together (finalizer of MurmurHash3, from memory: any scattering will do). */
    private static long mix(long seed) {
        long z = (seed + 1) * 0xD6E8FEB86659FD93L;
        z = (z ^ (z >>> 33)) * 0xFF51AFD7ED558CCDL;
        z = (z ^ (z >>> 33)) * 0xC4CEB9FE1A85EC53L;
        return z ^ (z >>> 33);
    }

    /** Independent dice that depend on the seed and the number only, not on what was thrown before. */
    Dice fork(long number) {
        return new Dice(mix(seed) ^ (number + 1) * 0x2545F4914F6CDD1DL);
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
