package evenblade.input.intake;

/** The setting of a lossy encoder, as far as a file shows it. */
final class BitRate {
    /** Settings that encoders offer, in kbit/s (common practice, no source). */
    private static final int[] STEPS = {8, 12, 16, 24, 32, 48, 64, 96, 128, 160, 192, 256, 320};

    private BitRate() {}

    /** Codec and the nearest usual setting, such as {@code aac-64k}; without it where the file doesn't show one. */
    static String named(String codec, double bitsPerSecond) {
        if (!(bitsPerSecond > 0) || bitsPerSecond > 1e7) {
            return codec;
        }
        int nearest = STEPS[0];
        for (int step : STEPS) {
            if (Math.abs(Math.log(bitsPerSecond / 1000 / step)) < Math.abs(Math.log(bitsPerSecond / 1000 / nearest))) {
                nearest = step;
            }
        }
        return codec + "-" + nearest + "k";
    }
}
