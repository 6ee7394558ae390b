package evenblade.orders;

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
        double[] level = new double[size];
        double[] slope = new double[size];
        double meanT = 0;
        for (int i = 0; i < count; i++) {
            meanT += time[i];
        }
        meanT /= count;
        double timeSquares = 0;
        for (int i = 0; i < count; i++) {
            timeSquares += (time[i] - meanT) * (time[i] - meanT);
        }
        for (int c = 0; c < size; c++) {
            double sum = 0;
            double moment = 0;
            double[] column = columns[c];
            for (int i = 0; i < count; i++) {
                sum += column[i];
                moment += column[i] * (time[i] - meanT);
            }
            level[c] = sum;
            slope[c] = moment;
        }
        int at = 0;
        for (int r = 0; r < size; r++) {
            for (int c = 0; c <= r; c++) {
                sums[at++] -= level[r] * level[c] / count + (timeSquares > 0 ? slope[r] * slope[c] / timeSquares : 0);
            }
        }
        return new BlockSums(size, sums);
    }

    /** Lower triangle of C'C, four columns against one at a time so that each load serves four products. */
    private static void products(double[][] columns, int size, int count, double[] sums) {
        for (int r = 0; r < size; r++) {
            double[] row = columns[r];
            int base = r * (r + 1) / 2;
            int c = 0;
            for (; c + 3 <= r; c += 4) {
                double[] c0 = columns[c];
                double[] c1 = columns[c + 1];
                double[] c2 = columns[c + 2];
                double[] c3 = columns[c + 3];
                double s0 = 0;
                double s1 = 0;
                double s2 = 0;
                double s3 = 0;
                for (int i = 0; i < count; i++) {
                    double x = row[i];
                    s0 += x * c0[i];
                    s1 += x * c1[i];
                    s2 += x * c2[i];
                    s3 += x * c3[i];
                }
                sums[base + c] = s0;
                sums[base + c + 1] = s1;
                sums[base + c + 2] = s2;
                sums[base + c + 3] = s3;
            }
            for (; c <= r; c++) {
                double[] other = columns[c];
                double s = 0;
                for (int i = 0; i < count; i++) {
                    s += row[i] * other[i];
                }
                sums[base + c] = s;
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
