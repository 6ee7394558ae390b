package evenblade.keep.practice;

import evenblade.input.recording.Series;
import evenblade.input.recording.TimeBase;
import java.util.Arrays;
import java.util.Random;

/** Invents the time stamps of a phone or logger: jitter, and rows that never came. */
public final class JitteredClock {
    private JitteredClock() {}

    /**
     * Stamps about an even clock. Samples are taken at the stamped times: the stamps tell the truth.
     *
     * @param rateHz mean rows per second before any is lost
     * @param durationS of the recording
     * @param jitterS standard deviation of each stamp about the even clock, held within 0.45 steps so that
     *     stamps keep their order
     * @param lostShare share (0 to 1) of rows that are missing, each by itself
     * @param seed same seed, same stamps
     */
    public static TimeBase jittered(double rateHz, double durationS, double jitterS, double lostShare, long seed) {
        Random random = new Random(seed);
        int rows = (int) Math.floor(durationS * rateHz + 1e-9);
        double[] stamps = new double[rows];
        int kept = 0;
        double most = 0.45 / rateHz;
        for (int i = 0; i < rows; i++) {
            double offset = jitterS * random.nextGaussian();
            boolean lost = random.nextDouble() < lostShare;
            if (!lost) {
                stamps[kept++] = i / rateHz + Math.max(-most, Math.min(most, offset));
            }
        }
        return new TimeBase.Stamped(Series.of(Arrays.copyOf(stamps, kept)), rateHz);
    }
}
