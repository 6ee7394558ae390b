package evenblade.measure.orders;

/** Sums of products of one signal with many columns. */
final class Products {
    private Products() {}

    /** Four columns at a time, so that their sums don't wait for each other. */
    static double[] of(double[] x, double[][] columns, int columnCount, int count) {
        double[] sums = new double[columnCount];
        double[] four = new double[4];
        for (int k = 0; k < columnCount; k += 4) {
            int last = columnCount - 1;
            four(
                    x,
                    columns[k],
                    columns[Math.min(k + 1, last)],
                    columns[Math.min(k + 2, last)],
                    columns[Math.min(k + 3, last)],
                    count,
                    four);
            System.arraycopy(four, 0, sums, k, Math.min(4, columnCount - k));
        }
        return sums;
    }

    private static void four(double[] x, double[] a, double[] b, double[] c, double[] d, int count, double[] into) {
        double xa = 0;
        double xb = 0;
        double xc = 0;
        double xd = 0;
        for (int i = 0; i < count; i++) {
            double p = x[i];
            xa += p * a[i];
            xb += p * b[i];
            xc += p * c[i];
            xd += p * d[i];
        }
        into[0] = xa;
        into[1] = xb;
        into[2] = xc;
        into[3] = xd;
    }
}
