package evenblade.speed;

import evenblade.installation.Shaft;
import evenblade.numeric.DriftSmoother;
import evenblade.recording.Channel;
import evenblade.recording.Recording;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;

/**
 * Sharpens a track by the phase of the lines that stand out.
 *
 * <p>Each line is turned back by its order times the track's angle and summed over short slices, once;
 * all that follows works on the slices. What is left of its phase, divided by its order, is an error
 * of the track. First the change of phase from block to block gives the error of speed, then, with
 * each line's own phase taken out, the phases themselves are brought together, weighted by order² ×
 * signal over noise, and smoothed by {@link DriftSmoother}, several times over.
 *
 * <p>Where the crank's lines run away from the propeller's, the ratio is off by that much; the drift
 * is taken out and reported.
 */
final class PhaseLock {
    private static final int SLICES_PER_BLOCK = 16;
    private static final int ROUNDS = 5;
    /** Revolutions by which a round has to move the track anywhere for another to be worth while. */
    private static final double STILL = 2e-4;

    /** Share of the ratio by which it may be corrected. */
    private static final double MOST_RATIO_ERROR = 0.01;
    /**
     * Cycles that the highest crank line must have run away by: a mount near its resonance turns phases
     * by up to half a cycle as the speed wanders, a wrong ratio goes on for ever.
     */
    private static final double LEAST_DRIFT_CYCLES = 0.6;

    private final double[] sliceTime;
    private final double[] sliceRevolutions;
    private final double sliceS;
    private final List<Tone> tones;
    private final SpeedTrack start;
    private final DoubleUnaryOperator appearsAt;
    private final boolean exactRatio;

    /** One line in one channel: its slices, turned back. */
    private static final class Tone {
        final double order;
        final Shaft shaft;
        final double[] re;
        final double[] im;
        /** One-sided noise density around the line, unit²/Hz. */
        final double density;

        final int channel;
        double trust = 1;
        /** Whether it takes part: no stronger neighbour leaks into its blocks. */
        boolean clear;

        Tone(Candidate candidate, int slices) {
            this.channel = candidate.channel();
            this.order = candidate.order();
            this.shaft = candidate.shaft();
            this.clear = candidate.clear();
            this.re = new double[slices];
            this.im = new double[slices];
            this.density = candidate.density();
        }
    }

    /**
     * Readings of the propeller's angle.
     *
     * @param time of each reading, seconds
     * @param revolutions measured angle
     * @param variance of it
     * @param track through them, smoothed over the whole run
     * @param ratioCorrection share by which the reduction ratio is larger than entered; 0 where it
     *     can't be told from none
     * @param sound whether any line carried phase
     * @param drifts whether the speed wanders more than the readings' noise explains
     */
    record Locked(
            double[] time,
            double[] revolutions,
            double[] variance,
            SpeedTrack track,
            double ratioCorrection,
            boolean sound,
            boolean drifts) {}

    private PhaseLock(
            double[] sliceTime,
            double sliceS,
            List<Tone> tones,
            SpeedTrack start,
            DoubleUnaryOperator appearsAt,
            boolean exactRatio) {
        this.sliceTime = sliceTime;
        this.sliceS = sliceS;
        this.tones = tones;
        this.start = start;
        this.appearsAt = appearsAt;
        this.exactRatio = exactRatio;
        this.sliceRevolutions = new double[sliceTime.length];
        for (int s = 0; s < sliceTime.length; s++) {
            sliceRevolutions[s] = start.revolutionsAt(sliceTime[s]);
        }
    }

    /**
     * A line to lock on.
     *
     * @param channel index of the channel it is seen in
     * @param density one-sided noise density around it, unit²/Hz
     * @param clear whether short spectra show it free of its neighbours' leakage; the others join once
     *     the whole run has told how strong each is
     */
    record Candidate(int channel, double order, Shaft shaft, double density, boolean clear) {}

    static Locked lock(
            Recording recording,
            List<Channel> channels,
            List<Candidate> candidates,
            SpeedTrack start,
            DoubleUnaryOperator appearsAt,
            boolean exactRatio) {
        double fromS = recording.time().at(0);
        double duration = recording.time().durationS();
        double blockS = Math.max(0.4, Math.min(1.0, duration / 6));
        double sliceS = blockS / SLICES_PER_BLOCK;
        int slices = (int) Math.floor(duration / sliceS);
        double[] sliceTime = new double[slices];
        for (int s = 0; s < slices; s++) {
            sliceTime[s] = fromS + (s + 0.5) * sliceS;
        }
        List<Tone> tones = new ArrayList<>();
        for (Candidate candidate : candidates) {
            tones.add(new Tone(candidate, slices));
        }
        new Slicer(recording, channels, start, fromS, sliceS).fill(candidates, tones, slices);
        return new PhaseLock(sliceTime, sliceS, tones, start, appearsAt, exactRatio).locked();
    }

    /** Turns the lines back and sums them over slices. */
    private record Slicer(Recording recording, List<Channel> channels, SpeedTrack track, double fromS, double sliceS) {
        void fill(List<Candidate> candidates, List<Tone> tones, int slices) {
            int parts = 8;
            double[] mean = new double[channels.size()];
            for (int c = 0; c < channels.size(); c++) {
                mean[c] = Arrays.stream(channels.get(c).values().toArray())
                        .average()
                        .orElse(0);
            }
            IntStream.range(0, parts).parallel().forEach(part -> {
                for (int s = part * slices / parts; s < (part + 1) * slices / parts; s++) {
                    slice(candidates, tones, s, mean);
                }
            });
        }

        private void slice(List<Candidate> candidates, List<Tone> tones, int s, double[] mean) {
            double begin = fromS + s * sliceS;
            int first = Clock.indexAt(recording.time(), begin);
            int end = Clock.indexAt(recording.time(), begin + sliceS);
            int n = end - first;
            if (n <= 0) {
                return;
            }
            double[][] value = new double[channels.size()][n];
            for (int c = 0; c < value.length; c++) {
                channels.get(c).values().copyTo(first, value[c], n);
                for (int i = 0; i < n; i++) {
                    value[c][i] -= mean[c];
                }
            }
            double[] orders = tones.stream().mapToDouble(tone -> tone.order).toArray();
            double[][] cos = new double[orders.length][n];
            double[][] sin = new double[orders.length][n];
            new OrderWaves(track, recording.time()).fill(orders, first, n, cos, sin);
            for (int k = 0; k < orders.length; k++) {
                double[] x = value[candidates.get(k).channel()];
                double sumRe = 0;
                double sumIm = 0;
                for (int i = 0; i < n; i++) {
                    sumRe += x[i] * cos[k][i];
                    sumIm -= x[i] * sin[k][i];
                }
                tones.get(k).re[s] = sumRe / n;
                tones.get(k).im[s] = sumIm / n;
            }
        }
    }

    /** Hann-weighted blocks of one tone under a correction of the angle. */
    private record Blocks(double[] re, double[] im) {
        double power(int b) {
            return re[b] * re[b] + im[b] * im[b];
        }
    }

    private Blocks blocks(Tone tone, double[] correction, double ratioError, int width, int hop, int count) {
        double[] re = new double[count];
        double[] im = new double[count];
        double[] turnedRe = new double[sliceTime.length];
        double[] turnedIm = new double[sliceTime.length];
        for (int s = 0; s < sliceTime.length; s++) {
            double phase = -2 * Math.PI * tone.order * correction[s];
            if (tone.shaft == Shaft.CRANK) {
                phase -= 2 * Math.PI * tone.order * ratioError * (sliceRevolutions[s] + correction[s]);
            }
            double c = Math.cos(phase);
            double d = Math.sin(phase);
            turnedRe[s] = tone.re[s] * c - tone.im[s] * d;
            turnedIm[s] = tone.re[s] * d + tone.im[s] * c;
        }
        double total = width / 2.0;
        for (int b = 0; b < count; b++) {
            for (int i = 0; i < width; i++) {
                double w = (0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / width)) * 2 / total;
                re[b] += w * turnedRe[b * hop + i];
                im[b] += w * turnedIm[b * hop + i];
            }
        }
        return new Blocks(re, im);
    }

    private Locked locked() {
        double[] correction = new double[sliceTime.length];
        double ratioError = 0;
        int width = Math.max(4, SLICES_PER_BLOCK / 2);
        int hop = Math.max(1, width / 4);
        if (clearTones().isEmpty() || sliceTime.length < 2 * SLICES_PER_BLOCK) {
            return new Locked(new double[0], new double[0], new double[0], start, 0, false, false);
        }
        double[] rates = bySpeed(correction, ratioError, width, hop);
        applyRates(correction, rates, width, hop);
        ratioError = exactRatio ? 0 : ratioError(correction);

        width = SLICES_PER_BLOCK;
        Locked locked = null;
        for (int round = 0; round < ROUNDS; round++) {
            if (round == 3 && locked.drifts() && strong(locked)) {
                width = SLICES_PER_BLOCK / 2;
                reconsider(correction, ratioError, width);
            }
            locked = byPhase(correction, ratioError, width, width / 2);
            double moved = 0;
            for (int s = 0; s < sliceTime.length; s++) {
                double now = locked.track().revolutionsAt(sliceTime[s]) - sliceRevolutions[s];
                moved = Math.max(moved, Math.abs(now - correction[s]));
                correction[s] = now;
            }
            if (round > 2 && moved < STILL) {
                break;
            }
            if (round == 1) {
                ratioError = exactRatio ? 0 : ratioError(correction);
                reconsider(correction, ratioError, width);
            }
        }
        return locked;
    }

    /** Finds each line's power from the whole run, and with it which lines are clear of their neighbours. */
    private void reconsider(double[] correction, double ratioError, int width) {
        double[] power = new double[tones.size()];
        boolean[] clear = new boolean[tones.size()];
        boolean any = false;
        double seconds = sliceTime.length * sliceS;
        double meanHz =
                (start.revolutionsAt(start.toS()) - start.revolutionsAt(start.fromS())) / (start.toS() - start.fromS());
        for (int k = 0; k < power.length; k++) {
            Blocks whole = blocks(tones.get(k), correction, ratioError, sliceTime.length, 1, 1);
            power[k] = whole.power(0) - 4 * 1.5 * tones.get(k).density / seconds;
        }
        for (int k = 0; k < power.length; k++) {
            double leakage = 0;
            for (int j = 0; j < power.length; j++) {
                if (j != k && tones.get(j).channel == tones.get(k).channel) {
                    leakage += Math.max(0, power[j]) * leakage(tones.get(k).order, tones.get(j).order, width);
                }
            }
            clear[k] = power[k] > 0 && leakage < Leakage.MOST * power[k];
            any |= clear[k];
        }
        for (int k = 0; any && k < power.length; k++) {
            tones.get(k).clear = clear[k];
        }
    }

    /** Mean share of one line's power that leaks into another's blocks as both move with the speed. */
    private double leakage(double order, double other, int width) {
        double sum = 0;
        int stride = SLICES_PER_BLOCK;
        int n = 0;
        for (int s = 0; s < sliceTime.length; s += stride) {
            double hz = start.propellerHzAt(sliceTime[s]);
            double apartHz = Math.abs(appearsAt.applyAsDouble(order * hz) - appearsAt.applyAsDouble(other * hz));
            sum += Leakage.ofHann(apartHz * width * sliceS);
            n++;
        }
        return sum / n;
    }

    private List<Tone> clearTones() {
        return tones.stream().filter(tone -> tone.clear).toList();
    }

    /** Whether blocks half as long still carry a phase good to a fifth of a radian at the strongest line. */
    private boolean strong(Locked locked) {
        double best = 0;
        for (Tone tone : clearTones()) {
            best = Math.max(best, tone.order);
        }
        double[] sorted = locked.variance().clone();
        Arrays.sort(sorted);
        double usual = Math.sqrt(2 * sorted[(int) (0.8 * (sorted.length - 1))]);
        return 2 * Math.PI * best * usual < 0.2;
    }

    private int count(int width, int hop) {
        return (sliceTime.length - width) / hop + 1;
    }

    private double componentVariance(Tone tone, int width) {
        // One-sided density S: a Hann-weighted amplitude over w seconds has S·1.5/w per component.
        return tone.density * 1.5 / (width * sliceS) / (tone.trust * tone.trust);
    }

    /** Error of speed from block to block, revolutions per second. */
    private double[] bySpeed(double[] correction, double ratioError, int width, int hop) {
        int count = count(width, hop);
        double[] above = new double[count - 1];
        double[] below = new double[count - 1];
        for (Tone tone : clearTones()) {
            Blocks z = blocks(tone, correction, ratioError, width, hop, count);
            double variance = componentVariance(tone, width);
            for (int b = 0; b + 1 < count; b++) {
                double re = z.re[b + 1] * z.re[b] + z.im[b + 1] * z.im[b];
                double im = z.im[b + 1] * z.re[b] - z.re[b + 1] * z.im[b];
                double weight = Math.hypot(re, im) / variance;
                above[b] += weight * tone.order * Math.atan2(im, re) / (2 * Math.PI * hop * sliceS);
                below[b] += weight * tone.order * tone.order;
            }
        }
        for (int b = 0; b + 1 < count; b++) {
            above[b] = below[b] > 0 ? above[b] / below[b] : 0;
        }
        return above;
    }

    private void applyRates(double[] correction, double[] rates, int width, int hop) {
        double turned = 0;
        for (int s = 0; s < sliceTime.length; s++) {
            int b = Math.max(0, Math.min(rates.length - 1, (s - width / 2) / hop));
            correction[s] += turned + rates[b] * sliceS / 2;
            turned += rates[b] * sliceS;
        }
    }

    /**
     * Share by which the crank's lines run faster than entered against the propeller's, from the
     * slopes of their phases; 0 unless it is four standard errors from none and both shafts are heard.
     */
    private double ratioError(double[] correction) {
        int width = SLICES_PER_BLOCK;
        int hop = width / 2;
        int count = count(width, hop);
        double[] slope = new double[2];
        double[] information = new double[2];
        for (Tone tone : clearTones()) {
            double[] one = slopeOf(tone, blocks(tone, correction, 0, width, hop, count), width, hop);
            int side = tone.shaft == Shaft.CRANK ? 1 : 0;
            double weight = 1 / one[1];
            slope[side] += weight * one[0];
            information[side] += weight;
        }
        if (information[0] == 0 || information[1] == 0) {
            return 0;
        }
        double apart = slope[1] / information[1] - slope[0] / information[0];
        double error = Math.sqrt(1 / information[0] + 1 / information[1]);
        double share = apart / meanHz();
        double highest = 0;
        for (Tone tone : clearTones()) {
            highest = tone.shaft == Shaft.CRANK ? Math.max(highest, tone.order) : highest;
        }
        double seconds = sliceTime[sliceTime.length - 1] - sliceTime[0];
        boolean certain = Math.abs(apart) > 4 * error && Math.abs(apart) * seconds * highest > LEAST_DRIFT_CYCLES;
        return certain && Math.abs(share) < MOST_RATIO_ERROR ? share : 0;
    }

    private double meanHz() {
        return (sliceRevolutions[sliceTime.length - 1] - sliceRevolutions[0])
                / (sliceTime[sliceTime.length - 1] - sliceTime[0]);
    }

    /** Mean error of speed that one tone sees and the variance of it, from products over a wide lag. */
    private double[] slopeOf(Tone tone, Blocks z, int width, int hop) {
        int count = z.re.length;
        double rate = 0;
        double noise = componentVariance(tone, width);
        double power = 0;
        for (int b = 0; b < count; b++) {
            power += z.power(b);
        }
        power = Math.max(power / count - 2 * noise, 0.1 * noise);
        double variance = Double.POSITIVE_INFINITY;
        for (int lag = 1; lag <= count / 2; lag *= 2) {
            double re = 0;
            double im = 0;
            double unturn = -2 * Math.PI * tone.order * rate * lag * hop * sliceS;
            double c = Math.cos(unturn);
            double d = Math.sin(unturn);
            for (int b = 0; b + lag < count; b++) {
                double pr = z.re[b + lag] * z.re[b] + z.im[b + lag] * z.im[b];
                double pi = z.im[b + lag] * z.re[b] - z.re[b + lag] * z.im[b];
                re += pr * c - pi * d;
                im += pr * d + pi * c;
            }
            double pairs = count - lag;
            double angle = Math.atan2(im, re);
            // The mean of lagged products telescopes: about lag independent phases at either end.
            double phaseVariance = 2 * noise / power * 2 * Math.min(lag, pairs) / (pairs * pairs);
            double coherence = Math.hypot(re, im) / (pairs * (power + 2 * noise / pairs));
            if (coherence < 0.5 && lag > 1) {
                break;
            }
            double scale = 2 * Math.PI * tone.order * lag * hop * sliceS;
            rate += angle / scale;
            variance = phaseVariance / (scale * scale);
            if (4 * Math.sqrt(variance) * 2 * scale > Math.PI) {
                break;
            }
        }
        return new double[] {rate, variance};
    }

    private Locked byPhase(double[] correction, double ratioError, int width, int hop) {
        int count = count(width, hop);
        double[] time = new double[count];
        double[] current = new double[count];
        for (int b = 0; b < count; b++) {
            double middle = sliceTime[b * hop] + (width - 1) / 2.0 * sliceS;
            time[b] = middle;
            double sum = 0;
            double total = 0;
            for (int i = 0; i < width; i++) {
                double w = 0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / width);
                sum += w * correction[b * hop + i];
                total += w;
            }
            current[b] = sum / total;
        }
        double[] above = new double[count];
        double[] below = new double[count];
        List<Tone> heard = clearTones();
        double[][] residual = new double[heard.size()][count];
        double[][] weight = new double[heard.size()][count];
        for (int k = 0; k < heard.size(); k++) {
            Tone tone = heard.get(k);
            Blocks z = blocks(tone, correction, ratioError, width, hop, count);
            double re = 0;
            double im = 0;
            for (int b = 0; b < count; b++) {
                re += z.re[b];
                im += z.im[b];
            }
            double norm = Math.max(Math.hypot(re, im), 1e-300);
            re /= norm;
            im /= norm;
            double variance = componentVariance(tone, width);
            for (int b = 0; b < count; b++) {
                double alongRe = z.re[b] * re + z.im[b] * im;
                double acrossIm = z.im[b] * re - z.re[b] * im;
                double turn = 2 * Math.PI * tone.order;
                double signal = Math.max(z.power(b) - 2 * variance, 0.02 * z.power(b));
                residual[k][b] = Math.atan2(acrossIm, alongRe) / turn;
                weight[k][b] = turn * turn * signal / variance;
                above[b] += weight[k][b] * residual[k][b];
                below[b] += weight[k][b];
            }
        }
        double[] revolutions = new double[count];
        double[] variance = new double[count];
        for (int b = 0; b < count; b++) {
            double off = below[b] > 0 ? above[b] / below[b] : 0;
            revolutions[b] = start.revolutionsAt(time[b]) + current[b] + off;
            // Half-overlapped Hann blocks share noise: counted as independent they would seem 4/3 as good.
            variance[b] = 4.0 / 3.0 / Math.max(below[b], leastInformation(below));
        }
        judgeTones(heard, residual, weight, above, below);
        double from = start.fromS();
        double to = start.toS();
        DriftSmoother.Smoothed smooth = DriftSmoother.smooth(
                time, revolutions, variance, Math.min(from, time[0]), Math.max(to, time[count - 1]));
        double[] level = smooth.level().stream().mapToDouble(x -> x).toArray();
        double[] rate = smooth.rate().stream().mapToDouble(x -> x).toArray();
        return new Locked(
                time,
                revolutions,
                variance,
                new KnotTrack(time, level, rate, from, to),
                ratioError,
                true,
                smooth.drifts());
    }

    /** A block without samples still gets a (tiny) weight, so that the smoother runs on through a gap. */
    private static double leastInformation(double[] information) {
        double most = 0;
        for (double value : information) {
            most = Math.max(most, value);
        }
        return Math.max(1e-8 * most, 1e-12);
    }

    /** Lines whose phase strays more than their noise explains are trusted less in the next round. */
    private static void judgeTones(
            List<Tone> heard, double[][] residual, double[][] weight, double[] above, double[] below) {
        for (int k = 0; k < heard.size(); k++) {
            double sum = 0;
            int n = 0;
            for (int b = 0; b < above.length; b++) {
                double others = below[b] - weight[k][b];
                double rest = others > 0 ? (above[b] - weight[k][b] * residual[k][b]) / others : 0;
                if (others <= 0) {
                    continue;
                }
                double expected = 1 / weight[k][b] + 1 / others;
                double off = residual[k][b] - rest;
                sum += off * off / expected;
                n++;
            }
            if (n > 4) {
                double excess = sum / n;
                heard.get(k).trust *= excess > 2 ? Math.sqrt(1 / excess) : 1;
                heard.get(k).trust = Math.max(heard.get(k).trust, 1e-3);
            }
        }
    }
}
