package evenblade.tell.chart;

import evenblade.input.recording.Series;

/** A long curve brought down to what a picture can show, without losing a peak. */
final class Thinning {
    private Thinning() {}

    /**
     * The part of a curve from min to max, at most about four points per column: first, lowest, highest and last.
     *
     * @param x rising
     * @param y as long as x
     * @param min left end of what is shown
     * @param max right end of what is shown
     * @param columns how many columns the picture has for it
     * @return two arrays of one length, x and y; both empty where nothing lies in the range
     */
    static double[][] between(Series x, Series y, double min, double max, int columns) {
        double[] keptX = new double[Math.min(x.size(), 4 * columns + 8)];
        double[] keptY = new double[keptX.length];
        int kept = 0;
        int i = 0;
        while (i < x.size() && x.at(i) < min) {
            i++;
        }
        while (i < x.size() && x.at(i) <= max) {
            int column = column(x.at(i), min, max, columns);
            int end = i;
            int low = i;
            int high = i;
            while (end + 1 < x.size() && x.at(end + 1) <= max && column(x.at(end + 1), min, max, columns) == column) {
                end++;
                low = y.at(end) < y.at(low) ? end : low;
                high = y.at(end) > y.at(high) ? end : high;
            }
            int before = -1;
            for (int pick : new int[] {i, Math.min(low, high), Math.max(low, high), end}) {
                if (pick != before) {
                    keptX[kept] = x.at(pick);
                    keptY[kept++] = y.at(pick);
                    before = pick;
                }
            }
            i = end + 1;
        }
        return new double[][] {java.util.Arrays.copyOf(keptX, kept), java.util.Arrays.copyOf(keptY, kept)};
    }

    private static int column(double value, double min, double max, int columns) {
        return (int) Math.min(columns - 1.0, Math.floor((value - min) / (max - min) * columns));
    }
}
