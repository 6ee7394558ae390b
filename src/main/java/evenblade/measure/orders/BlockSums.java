package evenblade.measure.orders;

import java.util.Arrays;

/**
 * Sums of products of all columns of one block, cosine and sine of every line and the channels'
 * samples, with the block's own level and slope taken out of each.
 *
 * <p>With C the columns and D = [1, t] the block's drift, the sums are C'C − C'D (D'D)⁻¹ D'C: least
 * squares with the drift fitted along, its coefficients eliminated.
 */
final class BlockSums {
    private final int size;
    /** Lower triangle by rows. */
    private final double[] sums;

    private BlockSums(int size, double[] sums) {
        this.size = size;
        this.sums = sums;
    }

    /**
     * @param columns column by column; their first {@code count} values are used
     * @param columnCount how many of them
     * @param count number of samples
     * @param time time of each sample, seconds, about the middle of the block
     */
    static BlockSums of(double[][] columns, int columnCount, int count, double[] time) {
        int size = columnCount;
        double[] sums = new double[size * (size + 1) / 2];
        products(columns, size, count, sums);
        double meanT = 0;
        for (int i = 0; i < count; i++) {
            meanT += time[i];
        }
        meanT /= count;
        double timeSquares = 0;
        for (int i = 0; i < count; i++) {
            timeSquares += (time[i] - meanT) * (time[i] - meanT);
        }
        double[] sinceMiddle = new double[count];
        for (int i = 0; i < count; i++) {
            sinceMiddle[i] = time[i] - meanT;
        }
        double[] ones = new double[count];
        Arrays.fill(ones, 1);
        double[] level = Products.of(ones, columns, size, count);
        double[] slope = Products.of(sinceMiddle, columns, size, count);
        takeOut(level, 1.0 / count, sums);
        takeOut(slope, timeSquares > 0 ? 1 / timeSquares : 0, sums);
        return new BlockSums(size, sums);
    }

    /** Takes a multiple of v·v' off the lower triangle. */
    private static void takeOut(double[] v, double factor, double[] sums) {
        int at = 0;
        for (int r = 0; r < v.length; r++) {
            double row = factor * v[r];
            for (int c = 0; c <= r; c++) {
                sums[at++] -= row * v[c];
            }
        }
    }

    /** Lower triangle of C'C, two columns against four at a time, so that six loads serve eight products. */
    private static void products(double[][] columns, int size, int count, double[] sums) {
        double[] tile = new double[8];
        for (int r = 0; r < size; r += 2) {
            double[] first = columns[r];
            double[] second = r + 1 < size ? columns[r + 1] : columns[r];
            for (int c = 0; c <= r + 1 && c < size; c += 4) {
                tile(
                        first,
                        second,
                        columns[c],
                        columns[Math.min(c + 1, size - 1)],
                        columns[Math.min(c + 2, size - 1)],
                        columns[Math.min(c + 3, size - 1)],
                        count,
                        tile);
                for (int k = 0; k < 4; k++) {
                    put(sums, r, c + k, tile[k]);
                    if (r + 1 < size) {
                        put(sums, r + 1, c + k, tile[4 + k]);
                    }
                }
            }
        }
    }

    private static void put(double[] sums, int row, int column, double value) {
        if (column <= row) {
            sums[row * (row + 1) / 2 + column] = value;
        }
    }

    private static void tile(
            double[] x, double[] y, double[] a, double[] b, double[] c, double[] d, int count, double[] into) {
        double xa = 0;
        double xb = 0;
        double xc = 0;
        double xd = 0;
        double ya = 0;
        double yb = 0;
        double yc = 0;
        double yd = 0;
        for (int i = 0; i < count; i++) {
            double p = x[i];
            double q = y[i];
            xa += p * a[i];
            xb += p * b[i];
            xc += p * c[i];
            xd += p * d[i];
            ya += q * a[i];
            yb += q * b[i];
            yc += q * c[i];
            yd += q * d[i];
        }
        into[0] = xa;
        into[1] = xb;
        into[2] = xc;
        into[3] = xd;
        into[4] = ya;
        into[5] = yb;
        into[6] = yc;
        into[7] = yd;
    }

    /** Adds the lower triangle to that of a matrix. */
    void addTo(double[][] matrix) {
        int at = 0;
        for (int r = 0; r < size; r++) {
            for (int c = 0; c <= r; c++) {
                matrix[r][c] += sums[at++];
            }
        }
    }

    double at(int row, int column) {
        return row >= column ? sums[row * (row + 1) / 2 + column] : sums[column * (column + 1) / 2 + row];
    }

    int size() {
        return size;
    }
}
