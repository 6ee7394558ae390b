package evenblade.rig;

/** Sizes of signals against each other. */
final class Levels {
    private Levels() {}

    static double rms(double[] x) {
        double sum = 0;
        double mean = 0;
        for (double v : x) {
            mean += v / x.length;
        }
        for (double v : x) {
            sum += (v - mean) * (v - mean);
        }
        return Math.sqrt(sum / x.length);
    }

    /** Factor that brings something of root mean square {@code own} to {@code level} × the signal, absolute if it is still. */
    static double factor(double[] signal, double level, double own) {
        double there = rms(signal);
        return own == 0 ? 0 : (there > 0 ? there : 1) * level / own;
    }
}
