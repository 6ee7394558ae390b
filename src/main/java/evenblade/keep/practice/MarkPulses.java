package evenblade.keep.practice;

import evenblade.input.recording.TimeBase;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/**
 * The once-per-revolution pulse of an optical or magnetic pick-up on the propeller. The middle of its
 * rising edge stands where the propeller has turned a whole number of revolutions: angle zero.
 *
 * @param level height of the pulse above its base of 0
 * @param widthShare length of the pulse as a share of a revolution
 * @param missingShare share (0 to 1) of pulses that don't come
 * @param doubledShare share (0 to 1) of pulses followed by a false one a quarter of a revolution on
 * @param noiseRms white noise on the channel
 * @param seed of what is missing, doubled, and of the noise
 */
public record MarkPulses(
        double level, double widthShare, double missingShare, double doubledShare, double noiseRms, long seed) {
    /** A clean mark of unit height, 5 % of a revolution long. */
    public static MarkPulses clean() {
        return new MarkPulses(1, 0.05, 0, 0, 0, 0);
    }

    /** One sample per time. The edges are straight and two samples long, so that a crossing interpolates well. */
    public double[] samples(SpeedProfile speed, TimeBase time) {
        double[] samples = new double[time.size()];
        double halfEdgeS = 1 / time.rateHz();
        int next = 0;
        for (double riseS : rises(speed)) {
            double lengthS = Math.max(3 * halfEdgeS, widthShare / speed.propellerHzAt(riseS));
            while (next < samples.length && time.at(next) < riseS - halfEdgeS) {
                next++;
            }
            for (int i = next; i < samples.length && time.at(i) <= riseS + lengthS + halfEdgeS; i++) {
                double up = ramp((time.at(i) - riseS) / halfEdgeS);
                double down = ramp((time.at(i) - riseS - lengthS) / halfEdgeS);
                samples[i] += level * (up - down);
            }
        }
        Noise.white(noiseRms).addTo(samples, time.rateHz(), Seeds.part(seed, 1));
        return samples;
    }

    /** Times of the rising edges as the sensor gives them, in order. */
    List<Double> rises(SpeedProfile speed) {
        Random random = new Random(Seeds.part(seed, 0));
        List<Double> rises = new ArrayList<>();
        double last = speed.revolutionsAt(speed.durationS());
        for (int turn = 0; turn <= last; turn++) {
            boolean missing = random.nextDouble() < missingShare;
            boolean doubled = random.nextDouble() < doubledShare;
            if (!missing) {
                rises.add(speed.timeOfRevolution(turn));
            }
            if (!missing && doubled) {
                rises.add(speed.timeOfRevolution(turn + 0.25));
            }
        }
        Collections.sort(rises);
        return rises;
    }

    /** 0 below −1, 1 above 1, straight between. */
    private static double ramp(double x) {
        return Math.max(0, Math.min(1, (x + 1) / 2));
    }
}
