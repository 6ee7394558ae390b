package evenblade.measure.lines;

import evenblade.base.numeric.Distributions;
import evenblade.base.numeric.Selection;
import evenblade.measure.signal.Spectrum;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Finds the steady lines in an averaged amplitude spectrum of half-overlapped Hann stretches.
 *
 * <p>A peak counts where its power stands above the noise beside it at {@link #FALSE_ALARM} over the whole band: an F-test
 * of each peak against {@code FALSE_ALARM} over the number of bins looked at. The noise is the larger of the medians on
 * either side, so that a slope isn't taken for a line. Peaks broader than a line can be are left out.
 *
 * <p>Amplitude: √(2 Σ(p − noise) / B) over the line's bins, p = a²/2 of each bin and B = 1.5 bins the noise bandwidth of
 * Hann. Its error, with f the noise in one bin and n stretches of d degrees of freedom together: var(A²/2) = 1.52 A² f/n
 * + 10 f²/d. The first term is 2 Σw⁴/(Σw²)² with the 0.086 that half-overlapped Hann² stretches share; the second adds
 * the noise of five correlated bins (8.7 f²) and of the floor (2.5 f²), over B²; worked out here, checked by simulation.
 */
final class LineSearch {
    /** Chance that noise alone shows a line anywhere in the band. */
    static final double FALSE_ALARM = 0.01;
    /** Bins on each side that the noise is taken from. */
    private static final int BESIDE = 40;
    /** Bins next to a peak that may belong to it. */
    private static final int GUARD = 3;
    /** The mean was taken off, which reaches so far up. */
    private static final int FIRST_NOISE_BIN = 2;
    /** Below this bin there is too little noise beside a line to tell it. */
    static final int LOWEST_BIN = 12;
    /** Where many stretches are averaged, a gentle hump stands above chance; a line stands out by at least this. */
    private static final double LEAST_RATIO = 2;
    /** Bins above half its height: a Hann line has two, one that wanders a little has four. */
    private static final int BROADEST = 4;

    /** Degrees of freedom that each half-overlapped Hann stretch of noise is worth (Welch 1967). */
    private static final double DOF_PER_STRETCH = 1.9;
    /** A median over {@link #BESIDE} correlated bins is worth about ten bins of its own: 40 / 1.94 / 1.56, rounded down. */
    private static final double FLOOR_BINS = 10;
    /** Noise bandwidth of Hann in bins. */
    private static final double BANDWIDTH = 1.5;

    /** From the line with the noise, see above. */
    private static final double CROSS_TERM = 1.52;
    /** From the noise alone, see above. */
    private static final double NOISE_TERM = 10;

    /** A peak beside a stronger one, below this share of it, may be its skirt. */
    private static final double SHARE_OF_NEIGHBOUR = 0.05;
    /** How far a skirt reaches, as a share of the stronger line's frequency: a speed wanders by about so much. */
    private static final double SKIRT = 0.01;

    private static final double SKIRT_BINS = 5; // ours: beyond, a Hann window's side lobes are small
    /** Weaker ones, 100 dB under the strongest, are the rounding of 16-bit samples. */
    private static final double LEAST_SHARE = 1e-5;

    private final double[] power;
    private final double binHz;
    private final int stretches;
    private final double dof;

    private LineSearch(Spectrum spectrum) {
        this.power = spectrum.values().toArray();
        for (int k = 0; k < power.length; k++) {
            power[k] *= power[k] / 2;
        }
        this.binHz = spectrum.binHz();
        this.stretches = spectrum.segments();
        this.dof = DOF_PER_STRETCH * stretches;
    }

    /** A line and the noise beside it: mean of a²/2 in one bin. */
    record Found(SteadyLine line, double noise) {}

    /**
     * The lines, strongest first.
     *
     * @param spectrum amplitudes, Hann, half overlapped
     * @param upToHz highest frequency looked at
     */
    static List<Found> in(Spectrum spectrum, double upToHz) {
        return new LineSearch(spectrum).lines(upToHz);
    }

    private List<Found> lines(double upToHz) {
        int end = Math.min(power.length - 1 - GUARD, (int) (upToHz / binHz) + 1);
        List<Found> found = new ArrayList<>();
        for (int k = LOWEST_BIN; k < end; k++) {
            if (power[k] > power[k - 1] && power[k] >= power[k + 1]) {
                double noise = noise(k);
                if (standsOut(power[k], noise, end - LOWEST_BIN) && width(k, noise) <= BROADEST) {
                    found.add(line(k, noise));
                }
            }
        }
        found.sort(Comparator.comparingDouble((Found each) -> each.line().amplitude())
                .reversed());
        List<Found> kept = new ArrayList<>();
        for (Found each : found) {
            if (kept.stream().noneMatch(stronger -> isSkirt(each.line(), stronger.line()))
                    && each.line().amplitude()
                            >= LEAST_SHARE * found.get(0).line().amplitude()) {
                kept.add(each);
            }
        }
        return kept;
    }

    private boolean standsOut(double peak, double noise, int bins) {
        return peak > LEAST_RATIO * noise
                && (noise == 0 || Distributions.fTail(peak / noise, dof, FLOOR_BINS * dof) < FALSE_ALARM / bins);
    }

    /** The mean noise in a bin, from the medians on either side of a peak. */
    private double noise(int k) {
        double median = Math.max(
                median(Math.max(FIRST_NOISE_BIN, k - GUARD - BESIDE), k - GUARD),
                median(k + GUARD + 1, Math.min(power.length, k + GUARD + 1 + BESIDE)));
        // The median of χ²/dof lies below its mean of 1 (Wilson and Hilferty 1931; from memory).
        double below = 1 - 2 / (9 * dof);
        return median / (below * below * below);
    }

    private double median(int from, int to) {
        if (to <= from) {
            return 0;
        }
        double[] some = new double[to - from];
        System.arraycopy(power, from, some, 0, some.length);
        return Selection.ofRank(some, some.length, some.length / 2);
    }

    private int width(int k, double noise) {
        double half = noise + (power[k] - noise) / 2;
        int from = k;
        while (from > 0 && power[from - 1] > half) {
            from--;
        }
        int to = k;
        while (to < power.length - 1 && power[to + 1] > half) {
            to++;
        }
        return to - from + 1;
    }

    private Found line(int k, double noise) {
        int reach = Math.max(2, width(k, noise));
        double sum = power[k] - noise;
        for (int side = -1; side <= 1; side += 2) {
            for (int i = 1; i <= reach; i++) {
                int at = k + side * i;
                // Where it rises again, the next line begins.
                if (at < 1 || at >= power.length || i > 1 && power[at] > power[at - side]) {
                    break;
                }
                sum += power[at] - noise;
            }
        }
        double half = Math.max(sum, power[k] - noise) / BANDWIDTH;
        double amplitude = Math.sqrt(2 * half);
        double variance = CROSS_TERM * amplitude * amplitude * noise / stretches + NOISE_TERM * noise * noise / dof;
        return new Found(
                new SteadyLine((k + offset(k, noise)) * binHz, amplitude, Math.sqrt(variance) / amplitude, true),
                noise);
    }

    /** How far the line stands from the middle of its highest bin: (2r − 1)/(1 + r) for Hann, r the larger neighbour over it. */
    private double offset(int k, double noise) {
        int side = power[k + 1] > power[k - 1] ? 1 : -1;
        double ratio = Math.sqrt(Math.max(0, power[k + side] - noise) / (power[k] - noise));
        // Noise can move the quotient a little beyond its range of 0 to a half.
        return side * Math.max(-0.1, Math.min(0.5, (2 * ratio - 1) / (1 + ratio)));
    }

    private boolean isSkirt(SteadyLine line, SteadyLine stronger) {
        double apart = Math.abs(line.frequencyHz() - stronger.frequencyHz());
        return apart < Math.max(SKIRT_BINS * binHz, SKIRT * stronger.frequencyHz())
                && line.amplitude() < SHARE_OF_NEIGHBOUR * stronger.amplitude();
    }
}
