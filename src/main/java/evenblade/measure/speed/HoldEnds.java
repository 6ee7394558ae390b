package evenblade.measure.speed;

import java.util.Arrays;

/**
 * Where a hold of the throttle ends, by half-overlapped blocks of its lines: blocks at a move in which they don't stand still are
 * no part of it, and of what is left one more block's length at either move. The phases of a block that reaches into a move are
 * off by some hundredths of a turn, and a mean speed rests on the phases at both ends.
 *
 * @param first block that counts
 * @param end the block after the last that counts
 * @param blockS length of a block
 * @param fromMoved whether the throttle was moved before
 * @param toMoved whether it was moved after
 */
record HoldEnds(int first, int end, double blockS, boolean fromMoved, boolean toMoved) {
    /** Share of their usual power that lines keep at the ends of a hold; in a move of the throttle they smear to a few hundredths. */
    private static final double LEAST_STILL = 0.4;
    /** Lines that swing or stand in noise fall short by chance; by so many standard deviations they don't. */
    private static final double CERTAIN_SIGMAS = 4;

    private static final double MAD_TO_SIGMA = 1.4826; // median absolute deviation of a normal distribution
    /** So much a short spectrum may see of a hold beyond its end, seconds: twice half its length, and some. */
    private static final double MOST_END_S = 2.5;

    private static final double MOST_END_SHARE = 0.2; // ours: what is left is still the hold
    /** Blocks left out at a move; the hold ends in the middle of the next, which is a block's length from its own end. */
    private static final int LEFT_OUT = 1;
    /** A hold is left whole where it has fewer blocks: of a shorter one each end would be more than an eighth. */
    private static final int LEAST_BLOCKS = 14;

    /**
     * @param still how much of the lines keeps its phase, block by block
     * @param blockS length of a block; the next begins half of it later
     */
    static HoldEnds of(double[] still, double blockS, boolean fromMoved, boolean toMoved) {
        double usual = median(still);
        double scatter = MAD_TO_SIGMA
                * median(Arrays.stream(still).map(v -> Math.abs(v - usual)).toArray());
        double least = Math.min(LEAST_STILL * usual, usual - CERTAIN_SIGMAS * scatter);
        int most = (int) Math.min(MOST_END_S / (blockS / 2), MOST_END_SHARE * still.length);
        int first = 0;
        while (fromMoved && first < most && still[first] < least) {
            first++;
        }
        int end = still.length;
        while (toMoved && still.length - end < most && still[end - 1] < least) {
            end--;
        }
        boolean enough = end - first >= LEAST_BLOCKS;
        return new HoldEnds(first, end, blockS, fromMoved && enough, toMoved && enough).less();
    }

    private HoldEnds less() {
        return new HoldEnds(
                fromMoved ? first + LEFT_OUT : first, toMoved ? end - LEFT_OUT : end, blockS, fromMoved, toMoved);
    }

    /**
     * The hold.
     *
     * @param stretch in which it was looked for
     * @param time middle of every block
     */
    DwellFinder.Stretch within(DwellFinder.Stretch stretch, double[] time) {
        double from = first == 0 ? stretch.fromS() : time[first] - (fromMoved ? 0 : blockS / 2);
        double to = end == time.length ? stretch.toS() : time[end - 1] + (toMoved ? 0 : blockS / 2);
        return new DwellFinder.Stretch(from, to);
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }
}
