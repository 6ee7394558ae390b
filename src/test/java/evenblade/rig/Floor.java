package evenblade.rig;

/**
 * Noise that falls with frequency: white, plus two first-order processes with corners at 150 Hz and 15 Hz.
 * One-sided density at f: 2·white²/rate + Σ 4·rms²·τ/(1 + (2πfτ)²), τ = 1/(2π·corner); unit²/Hz.
 *
 * @param whiteRms standard deviation of the white part, in the channel's unit
 * @param middleRms of the part with its corner at 150 Hz
 * @param lowRms of the part with its corner at 15 Hz
 */
public record Floor(double whiteRms, double middleRms, double lowRms) {
    private static final double MIDDLE_S = 1 / (2 * Math.PI * 150);
    private static final double LOW_S = 1 / (2 * Math.PI * 15);

    public static final Floor NONE = new Floor(0, 0, 0);

    public static Floor white(double rms) {
        return new Floor(rms, 0, 0);
    }

    public Floor times(double factor) {
        return new Floor(whiteRms * factor, middleRms * factor, lowRms * factor);
    }

    /** One-sided power density, without what folds down from beyond half the rate. */
    public double density(double frequencyHz, double rateHz) {
        return 2 * whiteRms * whiteRms / rateHz
                + fall(middleRms, MIDDLE_S, frequencyHz)
                + fall(lowRms, LOW_S, frequencyHz);
    }

    private static double fall(double rms, double memoryS, double frequencyHz) {
        double x = 2 * Math.PI * frequencyHz * memoryS;
        return 4 * rms * rms * memoryS / (1 + x * x);
    }

    void addTo(double[] x, double rateHz, Dice dice) {
        double keepMiddle = Math.exp(-1 / (rateHz * MIDDLE_S));
        double keepLow = Math.exp(-1 / (rateHz * LOW_S));
        double freshMiddle = middleRms * Math.sqrt(1 - keepMiddle * keepMiddle);
        double freshLow = lowRms * Math.sqrt(1 - keepLow * keepLow);
        double middle = middleRms * dice.normal();
        double low = lowRms * dice.normal();
        for (int i = 0; i < x.length; i++) {
            x[i] += middle + low + (whiteRms > 0 ? whiteRms * dice.normal() : 0);
            middle = middleRms > 0 ? keepMiddle * middle + freshMiddle * dice.normal() : 0;
            low = lowRms > 0 ? keepLow * low + freshLow * dice.normal() : 0;
        }
    }
}
