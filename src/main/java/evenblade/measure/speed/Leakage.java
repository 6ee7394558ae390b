package evenblade.measure.speed;

/** How much of one line a window lets through at another. */
final class Leakage {
    /** Share of a line's power that a neighbour may leak into it. */
    static final double MOST = 0.03;

    private Leakage() {}

    /** Power of a Hann window's transform {@code bins} off its middle; its envelope beyond the main lobe. */
    static double ofHann(double bins) {
        if (bins < 2) {
            return 1;
        }
        double envelope = 1 / (Math.PI * bins * (bins * bins - 1));
        return envelope * envelope;
    }
}
