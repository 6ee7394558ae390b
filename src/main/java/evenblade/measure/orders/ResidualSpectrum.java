package evenblade.measure.orders;

import evenblade.input.recording.Series;
import evenblade.measure.signal.AveragedSpectrum;
import evenblade.measure.signal.Spectrum;
import java.util.Arrays;
import java.util.List;

/**
 * The noise that is left beside the lines of a dwell, from an averaged spectrum of the residual.
 *
 * <p>At a line the density is the median of bins two to eight resolutions to either side, each an
 * average over half-overlapped stretches; bins beside another line are left out where enough remain.
 */
final class ResidualSpectrum {
    private static final int NEAREST = 2; // beside the Hann window's main lobe
    private static final int FARTHEST = 8; // ours: near enough to have the same noise

    private final Spectrum density;
    private final double dofPerStretch;

    ResidualSpectrum(Series residual, double rateHz) {
        // Six stretches side by side at least, of a length at which lines beside each other stay apart; ours.
        double seconds = Math.max(0.3, Math.min(1.5, residual.size() / rateHz / 6));
        AveragedSpectrum average = AveragedSpectrum.hann(seconds, rateHz, Spectrum.Scaling.DENSITY, residual.size());
        this.density = average.of(residual, rateHz);
        this.dofPerStretch = average.dofPerSegment();
    }

    /**
     * Noise density around a frequency.
     *
     * @param unitSquaredPerHz one-sided
     * @param dof degrees of freedom it is known with
     */
    record Noise(double unitSquaredPerHz, double dof) {}

    Noise around(double frequencyHz, List<Double> otherLinesHz) {
        double bin = density.binHz();
        int bins = density.values().size();
        int middle = (int) Math.round(frequencyHz / bin);
        double[] free = new double[2 * (FARTHEST - NEAREST + 1)];
        double[] all = new double[free.length];
        int freeCount = 0;
        int allCount = 0;
        for (int away = NEAREST; away <= FARTHEST; away++) {
            for (int side = -1; side <= 1; side += 2) {
                int at = middle + side * away;
                if (at < 1 || at >= bins - 1) {
                    continue;
                }
                double value = density.values().at(at);
                all[allCount++] = value;
                // Nearer, its main lobe reaches in.
                boolean beside = otherLinesHz.stream().anyMatch(other -> Math.abs(other - at * bin) < 1.5 * bin);
                if (!beside) {
                    free[freeCount++] = value;
                }
            }
        }
        double[] used = freeCount >= 5 ? Arrays.copyOf(free, freeCount) : Arrays.copyOf(all, allCount);
        Arrays.sort(used);
        double dofPerBin = dofPerStretch * density.segments();
        // The median of a mean of exponentials lies below its mean by about 1 - 2/(3 dof) cubed (Wilson & Hilferty).
        double medianShare = Math.pow(1 - 2 / (9 * dofPerBin), 3);
        int n = used.length;
        double median = n % 2 == 1 ? used[n / 2] : 0.5 * (used[n / 2 - 1] + used[n / 2]);
        // A median is worth 2/π of a mean, and neighbouring Hann bins, 4/9 alike, some six tenths of independent ones.
        return new Noise(median / medianShare, dofPerBin * n * 0.4);
    }
}
