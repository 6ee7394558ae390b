package evenblade.measure.speed;

import java.util.Arrays;

/**
 * Which of several orders are sums of two others, so that their waves come from one product of waves
 * instead of a sine and a cosine: e^{i(a+b)φ} = e^{iaφ}·e^{ibφ}.
 *
 * <p>The lines of a shaft are multiples of its first (or half) order, so two or three waves turned by
 * themselves give all the rest, and a product of whole arrays suits the vector units of the processor.
 */
final class OrderFamily {
    /** Orders that are a sum to this share: over a million turns the angles differ by less than 1e-5 radian. */
    private static final double SAME = 1e-12;

    private static final int BY_ITSELF = -1; // no other order explains it

    private final double[] orders;
    /** Places in the order of making: a product comes after its factors. */
    private final int[] making;

    private final int[] factor;
    private final int[] otherFactor;

    OrderFamily(double[] orders) {
        this.orders = orders.clone();
        this.factor = new int[orders.length];
        this.otherFactor = new int[orders.length];
        this.making = java.util.stream.IntStream.range(0, orders.length)
                .boxed()
                .sorted(java.util.Comparator.comparingDouble(k -> orders[k]))
                .mapToInt(k -> k)
                .toArray();
        int[] depth = new int[orders.length];
        for (int at = 0; at < making.length; at++) {
            relate(at, depth);
        }
    }

    /** Looks for the two of those made before that give the order with the fewest products on the way. */
    private void relate(int at, int[] depth) {
        int k = making[at];
        factor[k] = BY_ITSELF;
        int best = Integer.MAX_VALUE;
        for (int i = 0; i < at; i++) {
            for (int j = i; j < at; j++) {
                int one = making[i];
                int other = making[j];
                int deep = 1 + Math.max(depth[one], depth[other]);
                if (deep < best && Math.abs(orders[one] + orders[other] - orders[k]) <= SAME * orders[k]) {
                    factor[k] = one;
                    otherFactor[k] = other;
                    best = deep;
                }
            }
        }
        depth[k] = factor[k] == BY_ITSELF ? 0 : best;
    }

    int size() {
        return orders.length;
    }

    double order(int k) {
        return orders[k];
    }

    /** Places of the orders whose waves have to be turned by themselves. */
    int[] byThemselves() {
        return Arrays.stream(making).filter(k -> factor[k] == BY_ITSELF).toArray();
    }

    /** Makes the other waves from those turned by themselves, {@code count} samples each. */
    void multiplyOut(double[][] cos, double[][] sin, int count) {
        for (int k : making) {
            if (factor[k] != BY_ITSELF) {
                int a = factor[k];
                int b = otherFactor[k];
                product(cos[a], sin[a], cos[b], sin[b], cos[k], sin[k], count);
            }
        }
    }

    private static void product(
            double[] cosA, double[] sinA, double[] cosB, double[] sinB, double[] cos, double[] sin, int count) {
        for (int i = 0; i < count; i++) {
            cos[i] = cosA[i] * cosB[i] - sinA[i] * sinB[i];
            sin[i] = cosA[i] * sinB[i] + sinA[i] * cosB[i];
        }
    }
}
