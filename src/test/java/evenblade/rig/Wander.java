package evenblade.rig;

/**
 * A slow random swing: Gaussian noise of a first-order process, exp(−|τ|/memory) its correlation, of mean 0 and standard
 * deviation 1 in the long run. Smoothed once more where a rate of change must not jump.
 */
final class Wander {
    private Wander() {}

    static double[] firstOrder(int points, double stepS, double memoryS, Dice dice) {
        double[] x = new double[points];
        double keep = Math.exp(-stepS / memoryS);
        double fresh = Math.sqrt(1 - keep * keep);
        double state = dice.normal();
        for (int i = 0; i < points; i++) {
            x[i] = state;
            state = keep * state + fresh * dice.normal();
        }
        return x;
    }

    /** Two such stages one after the other: correlation (1 + |τ|/m)·exp(−|τ|/m); scaled back to deviation 1. */
    static double[] smooth(int points, double stepS, double memoryS, Dice dice) {
        int settle = (int) Math.min(20_000, 8 * memoryS / stepS);
        double keep = Math.exp(-stepS / memoryS);
        double[] x = new double[points];
        double first = 0;
        double second = 0;
        // variance of the second stage for white input of variance 1: (1−a)^4 (1+a²)/(1−a²)³, a = keep
        double scale = Math.sqrt(Math.pow(1 - keep * keep, 3) / (1 + keep * keep)) / Math.pow(1 - keep, 2);
        for (int i = -settle; i < points; i++) {
            first = keep * first + (1 - keep) * dice.normal();
            second = keep * second + (1 - keep) * first;
            if (i >= 0) {
                x[i] = second * scale;
            }
        }
        return x;
    }

    /** Standard deviation {@code percent} of 100 with a memory, never past three deviations. */
    static double[] bounded(int points, double stepS, double memoryS, double deviation, Dice dice) {
        double[] x = smooth(points, stepS, memoryS, dice);
        for (int i = 0; i < points; i++) {
            x[i] = Math.max(-3, Math.min(3, x[i])) * deviation;
        }
        return x;
    }
}
