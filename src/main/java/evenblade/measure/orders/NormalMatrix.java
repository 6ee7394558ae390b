package evenblade.measure.orders;

import evenblade.base.numeric.PositiveDefinite;
import java.util.Optional;
import java.util.SplittableRandom;

/**
 * Sums of products of all columns over a dwell, each block's level and slope taken out, and the
 * inverse.
 *
 * <p>In a long dwell the sums are taken over a part of the samples, one of every so many, drawn by
 * chance (with a fixed seed) so that no pair of lines beats with the drawing. The fit holds what it
 * leaves against the columns again ({@link DwellFit}), so an inverse that is a few per cent off only
 * makes it take one more step to the same result.
 */
final class NormalMatrix {
    private static final int ENOUGH_SAMPLES = 60_000; // ours: enough for its sums

    private final double[][] inverse;
    /** Sums of each block where all samples were taken, else empty. */
    private final BlockSums[] whole;

    private NormalMatrix(double[][] inverse, BlockSums[] whole) {
        this.inverse = inverse;
        this.whole = whole;
    }

    /** Gathers the sums while the blocks go by. */
    static final class Accumulator implements DwellBlocks.Work {
        private final DwellBlocks blocks;
        private final int every;
        private final BlockSums[] sums;

        Accumulator(DwellBlocks blocks) {
            this.blocks = blocks;
            this.every = (int) Math.max(1, blocks.samples() / ENOUGH_SAMPLES);
            this.sums = new BlockSums[blocks.blocks()];
        }

        /** Moves the samples drawn to the front of the columns. */
        @Override
        public void on(int block, int count, double[][] columns) {
            int[] drawn = drawn(count, every, block);
            double[] time = new double[drawn.length];
            for (int i = 0; i < drawn.length; i++) {
                time[i] = blocks.timeS(blocks.first(block) + drawn[i]);
            }
            for (int k = 0; every > 1 && k < blocks.unknowns(); k++) {
                gather(columns[k], drawn);
            }
            sums[block] = BlockSums.of(columns, blocks.unknowns(), drawn.length, time);
        }

        /** Empty where the lines aren't independent over the samples there are. */
        Optional<NormalMatrix> matrix() {
            int unknowns = blocks.unknowns();
            double[][] normal = new double[unknowns][unknowns];
            long taken = 0;
            for (int b = 0; b < sums.length; b++) {
                taken += blocks.count(b) / every;
                sums[b].addTo(normal);
            }
            double scale = every == 1 ? 1 : blocks.samples() / (double) taken;
            for (double[] row : normal) {
                for (int c = 0; c < unknowns; c++) {
                    row[c] *= scale;
                }
            }
            return PositiveDefinite.inverse(normal)
                    .map(inverse -> new NormalMatrix(inverse, every == 1 ? sums : new BlockSums[0]));
        }
    }

    private static void gather(double[] column, int[] drawn) {
        for (int i = 0; i < drawn.length; i++) {
            column[i] = column[drawn[i]];
        }
    }

    /** One sample of every so many, rising. */
    private static int[] drawn(int count, int every, int seed) {
        SplittableRandom chance = new SplittableRandom(seed);
        int[] drawn = new int[count / every];
        for (int i = 0; i < drawn.length; i++) {
            drawn[i] = i * every + (every > 1 ? chance.nextInt(every) : 0);
        }
        return drawn;
    }

    /** Row of the inverse times a vector. */
    double solved(int row, double[] right) {
        double sum = 0;
        for (int k = 0; k < right.length; k++) {
            sum += inverse[row][k] * right[k];
        }
        return sum;
    }

    /**
     * What one line alone in one block would change by, from its sums of products with what is left
     * there. In long dwells a line turns often enough in a block for its cosine and sine to be
     * perpendicular and of mean square one half.
     *
     * @return cosine, sine
     */
    double[] alone(int block, int count, int line, double ofCosine, double ofSine) {
        double cc = count / 2.0;
        double ss = cc;
        double cs = 0;
        if (whole.length > 0) {
            cc = whole[block].at(2 * line, 2 * line);
            ss = whole[block].at(2 * line + 1, 2 * line + 1);
            cs = whole[block].at(2 * line, 2 * line + 1);
        }
        double determinant = cc * ss - cs * cs;
        return new double[] {(ss * ofCosine - cs * ofSine) / determinant, (cc * ofSine - cs * ofCosine) / determinant};
    }
}
