package evenblade.rig;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * When samples are taken and what the file says about it.
 *
 * @param rateHz the rate as stated
 * @param clockPpm how much faster the clock really is: true rate = rate·(1 + ppm·1e-6)
 * @param jitter standard deviation of the moment of sampling, as share of the step (the stamps follow it)
 * @param stampQuantumS stamps are rounded to this (CSV only)
 * @param burst so many samples get the one stamp of the pack's arrival (1: none)
 * @param gapsPerMinute so many times a minute 0.1–1 s of samples are lost (CSV only)
 * @param repeats share of rows that a CSV file holds twice
 * @param pauseAtS from here on all stamps are later by {@code pauseS} (logger asleep; 0: none)
 */
public record Sampling(
        double rateHz,
        double clockPpm,
        double jitter,
        double stampQuantumS,
        int burst,
        double gapsPerMinute,
        double repeats,
        double pauseAtS,
        double pauseS) {

    public static Sampling even(double rateHz) {
        return new Sampling(rateHz, 0, 0, 1e-6, 1, 0, 0, 0, 0);
    }

    public static Sampling phone(double rateHz, double jitter) {
        return new Sampling(rateHz, 0, jitter, 1e-6, 1, 0, 0, 0, 0);
    }

    public Sampling withClockPpm(double ppm) {
        return new Sampling(rateHz, ppm, jitter, stampQuantumS, burst, gapsPerMinute, repeats, pauseAtS, pauseS);
    }

    public Sampling inBursts(int samples) {
        return new Sampling(rateHz, clockPpm, jitter, stampQuantumS, samples, gapsPerMinute, repeats, pauseAtS, pauseS);
    }

    public Sampling pausing(double atS, double lengthS) {
        return new Sampling(rateHz, clockPpm, jitter, stampQuantumS, burst, gapsPerMinute, repeats, atS, lengthS);
    }

    /** Stamps rounded to, e.g., 0.001 s. */
    public Sampling rounded(double quantumS) {
        return new Sampling(rateHz, clockPpm, jitter, quantumS, burst, gapsPerMinute, repeats, pauseAtS, pauseS);
    }

    /** A poor logger: some samples lost, some rows twice. */
    public Sampling losing(double gaps, double repeated) {
        return new Sampling(rateHz, clockPpm, jitter, stampQuantumS, burst, gaps, repeated, pauseAtS, pauseS);
    }

    double[] trueTimes(double seconds, Dice dice) {
        double step = 1 / (rateHz * (1 + clockPpm * 1e-6));
        double[] t = new double[(int) Math.floor(seconds / step)];
        for (int i = 0; i < t.length; i++) {
            double off = jitter > 0 ? jitter * Math.max(-2.5, Math.min(2.5, dice.normal())) : 0;
            t[i] = Math.max(0, (i + off) * step);
        }
        return gapsPerMinute > 0 ? withGaps(t, step, dice.fork(1)) : t;
    }

    private double[] withGaps(double[] t, double step, Dice dice) {
        boolean[] lost = new boolean[t.length];
        long gaps = Math.round(gapsPerMinute * t.length * step / 60);
        for (long g = 0; g < gaps; g++) {
            int from = dice.between(1, t.length - 2);
            int to = (int) Math.min(t.length - 1, from + dice.uniform(0.1, 1) / step);
            Arrays.fill(lost, from, to, true);
        }
        return IntStream.range(0, t.length)
                .filter(i -> !lost[i])
                .mapToDouble(i -> t[i])
                .toArray();
    }

    /** What the file says for true times: clock error, pause, bursts, rounding. */
    double[] stamps(double[] trueTimes) {
        double[] s = new double[trueTimes.length];
        for (int i = 0; i < s.length; i++) {
            int last = Math.min(s.length - 1, i / burst * burst + burst - 1);
            double t = stamp(burst > 1 ? trueTimes[last] : trueTimes[i]);
            s[i] = Math.round(t / stampQuantumS) * stampQuantumS;
        }
        return s;
    }

    /** What the file's clock shows at a true time. */
    public double stamp(double trueTimeS) {
        return trueTimeS * (1 + clockPpm * 1e-6) + (pauseS > 0 && trueTimeS >= pauseAtS ? pauseS : 0);
    }
}
