package evenblade.measure.orders;

import evenblade.base.numeric.Distributions;
import evenblade.base.numeric.Selection;
import evenblade.input.recording.Series;
import evenblade.input.recording.SeriesBuilder;
import evenblade.measure.signal.AveragedSpectrum;
import evenblade.measure.signal.Spectrum;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedTrack;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Looks through what the orders leave for other steady lines: tones that stand at one frequency, and,
 * where the speed wanders enough to tell, lines that keep step with it at an order nobody expected.
 *
 * <p>A bin counts where it stands out of the median of its neighbourhood at 1 % after allowing for the
 * number of bins, each bin being a mean of half-overlapped Hann stretches.
 */
record SteadyTones(Dwell dwell, SpeedTrack track, double rateHz) {
    private static final double FALSE_ALARM = 0.01; // one recording in a hundred may show a tone that isn't there
    /** Ours: wide enough for a median, narrow enough for a sloping floor. */
    private static final int NEIGHBOURHOOD_BINS = 40;

    private static final int FLOOR_STEP_BINS = 16; // ours: the floor changes little within so many
    private static final double FLOOR_DOF = 60; // ours: a median is less sure than the 80 bins it is taken from
    private static final int SPEEDS = 100; // places of a dwell at which the speed is looked up; it wanders slowly
    private static final int MOST = 12; // ours: more tones than a machine has
    /** Samples over which the speed is taken as steady for looking over angle: some hundredths of a second. */
    private static final int KNOT_SAMPLES = 16;
    /** Below this a sensor's own drift and the wind are all there is. */
    private static final double LOWEST_HZ = 4;

    /** A tone this close to a stronger line, as a share of that line, may be its own unsteadiness. */
    private static final double SHARE_OF_NEIGHBOUR = 0.05;
    /** Wander of the speed, as a share, from which on a line that follows it can be told from a tone. */
    private static final double WANDER_TO_TELL = 0.002;

    /** A line of the fit that the tones must be told from. */
    record Known(double frequencyHz, double amplitude) {}

    /**
     * A steady line found.
     *
     * @param frequencyHz at the dwell's mean speed
     * @param height density of its highest bin, unit²/Hz: of a smeared line's places the sharpest is the highest
     * @param smeared whether it is put together from several peaks of a line that the wandering speed smears
     */
    record Found(double frequencyHz, double amplitude, double height, boolean followsSpeed, boolean smeared) {
        Found(double frequencyHz, double amplitude, double height, boolean followsSpeed) {
            this(frequencyHz, amplitude, height, followsSpeed, false);
        }
    }

    /**
     * Searches a residual.
     *
     * @param residual evenly spaced samples of the dwell
     * @param known the lines fitted
     * @param upToHz highest frequency looked at
     */
    List<Found> search(Series residual, List<Known> known, double upToHz) {
        double seconds = residual.size() / rateHz;
        if (seconds < 2) {
            return List.of();
        }
        double stretch = Math.max(1, Math.min(8, seconds / 4));
        List<Found> found = new ArrayList<>(peaks(residual, rateHz, stretch, LOWEST_HZ, upToHz, false));
        double wander = (dwell.maxHz() - dwell.minHz()) / dwell.propellerHz();
        if (wander > WANDER_TO_TELL) {
            for (SpeedTrack shaft : track.ofCrank() == track ? List.of(track) : List.of(track, track.ofCrank())) {
                turning(residual, shaft, stretch, upToHz).forEach(line -> sharpen(found, line, stretch, wander));
            }
        }
        return found.stream()
                .filter(f -> !belongsTo(f, known, wander, stretch, seconds))
                .sorted(Comparator.comparingDouble(Found::amplitude).reversed())
                .limit(MOST)
                .toList();
    }

    /** Lines that keep step with a shaft. */
    private List<Found> turning(Series residual, SpeedTrack shaft, double stretch, double upToHz) {
        double hz = dwell.propellerHz();
        return peaks(overAngle(residual, shaft), rateHz / hz, stretch * hz, LOWEST_HZ / hz, upToHz / hz, true).stream()
                .map(line -> new Found(line.frequencyHz() * hz, line.amplitude(), line.height() / hz, true))
                .toList();
    }

    /** Puts a line in the place of its smears. */
    private static void sharpen(List<Found> found, Found line, double stretch, double wander) {
        double smear = Math.max(3 / stretch, wander * line.frequencyHz());
        List<Found> same = found.stream()
                .filter(f -> Math.abs(f.frequencyHz() - line.frequencyHz()) < smear)
                .toList();
        if (same.stream().allMatch(f -> f.height() < line.height())) {
            found.removeAll(same);
            found.add(line);
        }
    }

    /**
     * Tones with the smears of one order put together: where the speed wanders a line above those looked at over angle
     * shows several peaks.
     *
     * @param ratio engine revolutions per propeller revolution
     */
    List<Found> gathered(List<Found> found, double ratio) {
        List<Found> left = new ArrayList<>(found);
        double[] propeller = fromTo(track);
        double[] crank = fromTo(track.ofCrank());
        double highest = found.stream().mapToDouble(Found::frequencyHz).max().orElse(0);
        for (int k = 1; k * propeller[0] < highest && k * (propeller[1] - propeller[0]) < propeller[0] / 2; k++) {
            gather(left, k * propeller[0], k * propeller[1]);
        }
        for (int k = 1; k * crank[0] * ratio < highest && k * (crank[1] - crank[0]) < crank[0] / 2; k++) {
            gather(left, k * ratio * crank[0], k * ratio * crank[1]);
        }
        left.sort(Comparator.comparingDouble(Found::amplitude).reversed());
        return left;
    }

    /** Slowest and fastest speed of a shaft in the dwell. */
    private double[] fromTo(SpeedTrack shaft) {
        double[] hz = IntStream.range(0, SPEEDS)
                .mapToDouble(i -> shaft.propellerHzAt(dwell.fromS() + (i + 0.5) * dwell.durationS() / SPEEDS))
                .sorted()
                .toArray();
        return new double[] {hz[0], hz[SPEEDS - 1]};
    }

    /** Makes one of all tones between two frequencies that are no line by themselves. */
    private static void gather(List<Found> tones, double fromHz, double toHz) {
        List<Found> smears = tones.stream()
                .filter(f -> !f.followsSpeed() && f.frequencyHz() > fromHz && f.frequencyHz() < toHz)
                .toList();
        if (smears.size() > 1) {
            double power = smears.stream()
                    .mapToDouble(f -> f.amplitude() * f.amplitude())
                    .sum();
            double hz = smears.stream()
                            .mapToDouble(f -> f.amplitude() * f.amplitude() * f.frequencyHz())
                            .sum()
                    / power;
            double height = smears.stream().mapToDouble(Found::height).max().orElseThrow();
            tones.removeAll(smears);
            tones.add(new Found(hz, Math.sqrt(power), height, false, true));
        }
    }

    /**
     * Tones above all orders, in the signal itself.
     *
     * @param samples evenly spaced samples of the dwell
     * @param rate of those samples
     */
    static List<Found> above(Series samples, double rate, double fromHz, double upToHz) {
        double seconds = samples.size() / rate;
        if (seconds < 2 || fromHz >= upToHz) {
            return List.of();
        }
        return peaks(samples, rate, Math.max(1, Math.min(8, seconds / 4)), fromHz, upToHz, false);
    }

    private static boolean belongsTo(Found tone, List<Known> known, double wander, double stretch, double seconds) {
        for (Known line : known) {
            double apart = Math.abs(tone.frequencyHz() - line.frequencyHz());
            if (apart < FittedLine.RESOLVED / seconds) {
                return true;
            }
            // A hundredth beside the drift: as near as an entered ratio may be off.
            double reach = Math.max(4 / stretch, (wander + 0.01) * line.frequencyHz());
            if (apart < reach && tone.amplitude() < SHARE_OF_NEIGHBOUR * line.amplitude()) {
                return true;
            }
        }
        return false;
    }

    private static List<Found> peaks(
            Series samples, double rate, double stretch, double from, double upTo, boolean followsSpeed) {
        AveragedSpectrum average = AveragedSpectrum.hann(stretch, rate, Spectrum.Scaling.DENSITY, samples.size());
        Spectrum density = average.of(samples, rate);
        double bin = density.binHz();
        int bins = Math.min(density.values().size() - 3, (int) (upTo / bin));
        double dof = average.dofPerSegment() * density.segments();
        List<Found> found = new ArrayList<>();
        double[] floors = floors(density);
        int lowest = Math.max(4, (int) Math.ceil(from / bin));
        for (int k = lowest; k < bins; k++) {
            double value = density.values().at(k);
            double floor = floors[k / FLOOR_STEP_BINS];
            if (value <= 2 * floor
                    || value < density.values().at(k - 1)
                    || value < density.values().at(k + 1)
                    || Distributions.fTail(value / floor, dof, FLOOR_DOF) > FALSE_ALARM / bins) {
                continue;
            }
            double power = 0;
            double moment = 0;
            for (int i = k - 2; i <= k + 2; i++) {
                double over = Math.max(0, density.values().at(i) - floor);
                power += over;
                moment += over * i;
            }
            found.add(new Found(moment / power * bin, Math.sqrt(2 * power * bin), value, followsSpeed));
        }
        return found;
    }

    /** Median of the neighbourhood, once for every few bins. */
    private static double[] floors(Spectrum density) {
        int size = density.values().size();
        double[] floors = new double[size / FLOOR_STEP_BINS + 1];
        double[] nearby = new double[2 * NEIGHBOURHOOD_BINS];
        for (int s = 0; s < floors.length; s++) {
            int middle = s * FLOOR_STEP_BINS + FLOOR_STEP_BINS / 2;
            int from = Math.max(1, Math.min(middle - NEIGHBOURHOOD_BINS, size - nearby.length));
            int n = Math.min(nearby.length, size - from);
            for (int i = 0; i < n; i++) {
                nearby[i] = density.values().at(from + i);
            }
            floors[s] = Selection.ofRank(nearby, n, n / 2);
        }
        return floors;
    }

    /** The residual at equal steps of a shaft's angle, as many samples as before; for looking. */
    private Series overAngle(Series residual, SpeedTrack shaft) {
        double from = shaft.revolutionsAt(dwell.fromS());
        double step = dwell.propellerHz() / rateHz;
        int size = residual.size();
        SeriesBuilder over = new SeriesBuilder();
        float[] one = new float[1];
        int knot = 0;
        double here = 0;
        double next = shaft.revolutionsAt(dwell.fromS() + KNOT_SAMPLES / rateHz) - from;
        for (int k = 0; k < size; k++) {
            double wanted = k * step;
            while (next < wanted && (knot + 1) * KNOT_SAMPLES < size) {
                knot++;
                here = next;
                next = shaft.revolutionsAt(dwell.fromS() + (knot + 1) * KNOT_SAMPLES / rateHz) - from;
            }
            double at = Math.max(0, (knot + (wanted - here) / (next - here)) * KNOT_SAMPLES);
            int i = (int) Math.min(at, size - 2.0);
            double before = residual.at(i);
            one[0] = (float) (before + Math.min(1, at - i) * (residual.at(i + 1) - before));
            over.append(one, 0, 1);
        }
        return over.build(1);
    }
}
