package evenblade.measure.speed;

import java.util.Arrays;

/**
 * Where a hold of the throttle ends, by half-overlapped blocks of its lines: blocks at a move in which they don't stand still are no
 * part of it.
 *
 * @param first block that counts
 * @param end the block after the last that counts
 */
record HoldEnds(int first, int end) {
    /**
     * Share of their usual power that lines keep at the ends of a hold, within some hundredths; a block of which a quarter lies in a
     * move of the throttle keeps less, one in the middle of it a few hundredths. Ours.
     */
    private static final double LEAST_STILL = 0.85;
    /** Lines that swing or stand in noise fall short by chance; by so many standard deviations they don't. */
    private static final double CERTAIN_SIGMAS = 4;

    private static final double MAD_TO_SIGMA = 1.4826; // median absolute deviation of a normal distribution
    /** So much a short spectrum may see of a hold beyond its end, seconds: twice half its length, and some. */
    private static final double MOST_END_S = 2.5;

    private static final double MOST_END_SHARE = 0.2; // ours: what is left is still the hold

    /**
     * Of a stretch.
     *
     * @param still how much of the lines keeps its phase, block by block
     * @param blockS length of a block; the next begins half of it later
     * @param fromMoved whether the throttle was moved before; where the recording itself begins nobody moved it
     * @param toMoved whether it was moved after
     */
    static HoldEnds of(double[] still, double blockS, boolean fromMoved, boolean toMoved) {
        double usual = median(still);
        double scatter = MAD_TO_SIGMA
                * median(Arrays.stream(still).map(v -> Math.abs(v - usual)).toArray());
        double least = Math.min(LEAST_STILL * usual, usual - CERTAIN_SIGMAS * scatter);
        int most = (int) Math.min(MOST_END_S / (blockS / 2), MOST_END_SHARE * still.length);
        int first = 0;
        int end = still.length;
        // To the last that doesn't stand still: in the move itself a line may pass mains hum, and stand still for a
        // while.
        for (int b = 0; b < most; b++) {
            if (fromMoved && still[b] < least) {
                first = b + 1;
            }
            if (toMoved && still[still.length - 1 - b] < least) {
                end = still.length - 1 - b;
            }
        }
        return new HoldEnds(first, end);
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }
}
