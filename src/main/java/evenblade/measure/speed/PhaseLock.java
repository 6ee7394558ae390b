package evenblade.measure.speed;

import evenblade.base.numeric.DriftSmoother;
import evenblade.input.recording.Channel;
import evenblade.input.recording.Recording;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;

/**
 * Sharpens a track by the phase of the lines that stand out.
 *
 * <p>Each line is turned back by its order times the track's angle and summed over short slices
 * ({@link DemodulatedOrders}). What is left of its phase, divided by its order, is an error of the track.
 * First the change of phase from block to block gives the error of speed, then, with each line's own
 * phase taken out, the phases themselves are brought together, weighted by order² × signal over noise,
 * and smoothed by {@link DriftSmoother}, several times over.
 *
 * <p>Where the crank's lines run away from the propeller's, the ratio is off by that much; the drift
 * is taken out and reported ({@link RatioDrift}).
 */
final class PhaseLock {
    private static final int ROUNDS = 5; // ours: always as many
    /** Revolutions by which a round has to move the track anywhere for another to be worth while. */
    private static final double STILL = 2e-4;
    /** Phase of the strongest line that blocks half as long must still carry, radians. */
    private static final double STRONG_RAD = 0.2;

    private DemodulatedOrders slices;
    private final SpeedTrack start;
    private final DwellFinder.Stretch stretch;
    private final DoubleUnaryOperator appearsAt;
    private final boolean exactRatio;
    private ToneTrust trust;
    /** Whether a tone takes part: no stronger neighbour leaks into its blocks. */
    private final boolean[] clear;

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
            boolean drifts) {
        /** The track as it was, where no line carried phase. */
        static Locked not(SpeedTrack start) {
            return new Locked(new double[0], new double[0], new double[0], start, 0, false, false);
        }
    }

    private PhaseLock(
            DemodulatedOrders slices,
            SpeedTrack start,
            DwellFinder.Stretch stretch,
            DoubleUnaryOperator appearsAt,
            boolean exactRatio) {
        this.slices = slices;
        this.stretch = stretch;
        this.start = start;
        this.appearsAt = appearsAt;
        this.exactRatio = exactRatio;
        this.trust = new ToneTrust(slices);
        this.clear = new boolean[slices.tones().size()];
        for (int k = 0; k < clear.length; k++) {
            clear[k] = slices.tones().get(k).clear();
        }
    }

    /**
     * Locks on.
     *
     * @param tones lines that stand out
     * @param start the track so far
     * @param stretch of the recording, in which nobody moved the throttle: across a move phases slip by whole turns
     * @param appearsAt where a frequency appears in the recording
     * @param exactRatio whether the reduction ratio is known exactly
     */
    static Locked lock(
            Recording recording,
            List<Channel> channels,
            List<DemodulatedOrders.Tone> tones,
            SpeedTrack start,
            DwellFinder.Stretch stretch,
            DoubleUnaryOperator appearsAt,
            boolean exactRatio) {
        DemodulatedOrders slices = DemodulatedOrders.of(recording, channels, tones, start, stretch);
        return new PhaseLock(slices, start, stretch, appearsAt, exactRatio).locked();
    }

    private Locked locked() {
        int width = DemodulatedOrders.SLICES_PER_BLOCK / 2;
        int hop = width / 4;
        if (heard().isEmpty() || slices.slices() < 2 * DemodulatedOrders.SLICES_PER_BLOCK) {
            return Locked.not(start);
        }
        double[] correction = bySpeed(width, hop);
        double ratioError = exactRatio ? 0 : drift().share(correction, heard());
        width = DemodulatedOrders.SLICES_PER_BLOCK;
        Locked locked = null;
        for (int round = 0; round < ROUNDS; round++) {
            if (round == 3 && locked.drifts() && strong(locked)) {
                width = DemodulatedOrders.SLICES_PER_BLOCK / 2;
                reconsider(correction, ratioError, width);
            }
            locked = byPhase(correction, ratioError, width, width / 2);
            double moved = 0;
            for (int s = 0; s < correction.length; s++) {
                double now = locked.track().revolutionsAt(slices.timeS(s)) - slices.revolutions(s);
                moved = Math.max(moved, Math.abs(now - correction[s]));
                correction[s] = now;
            }
            if (round > 2 && moved < STILL) {
                break;
            }
            if (round == 1) {
                ratioError = exactRatio ? 0 : drift().share(correction, heard());
                reconsider(correction, ratioError, width);
                slices = slices.apart(correction, ratioError);
                trust = new ToneTrust(slices);
            }
        }
        return locked;
    }

    private RatioDrift drift() {
        return new RatioDrift(slices, trust);
    }

    private List<Integer> heard() {
        return IntStream.range(0, clear.length).filter(k -> clear[k]).boxed().toList();
    }

    private double order(int tone) {
        return slices.tones().get(tone).order();
    }

    /** Finds each line's power from the whole run, and with it which lines are clear of their neighbours. */
    private void reconsider(double[] correction, double ratioError, int width) {
        int n = clear.length;
        double[] power = new double[n];
        double seconds = slices.slices() * slices.sliceS();
        DemodulatedOrders.Turned turned = slices.under(correction, ratioError);
        for (int k = 0; k < n; k++) {
            power[k] = turned.blocks(k, slices.slices(), 1).power(0)
                    - 4 * 1.5 * slices.tones().get(k).density() / seconds;
        }
        boolean[] now = new boolean[n];
        boolean any = false;
        for (int k = 0; k < n; k++) {
            double leakage = 0;
            for (int j = 0; j < n; j++) {
                if (j != k
                        && slices.tones().get(j).channel()
                                == slices.tones().get(k).channel()) {
                    leakage += Math.max(0, power[j]) * leakage(order(k), order(j), width);
                }
            }
            now[k] = power[k] > 0 && leakage < Leakage.MOST * power[k];
            any |= now[k];
        }
        if (any) {
            System.arraycopy(now, 0, clear, 0, n);
        }
    }

    /** Mean share of one line's power that leaks into another's blocks as both move with the speed. */
    private double leakage(double order, double other, int width) {
        double sum = 0;
        int n = 0;
        for (int s = 0; s < slices.slices(); s += DemodulatedOrders.SLICES_PER_BLOCK) {
            double hz = start.propellerHzAt(slices.timeS(s));
            double apartHz = Math.abs(appearsAt.applyAsDouble(order * hz) - appearsAt.applyAsDouble(other * hz));
            sum += Leakage.ofHann(apartHz * width * slices.sliceS());
            n++;
        }
        return sum / n;
    }

    /** Whether blocks half as long still carry a good phase at the highest order heard. */
    private boolean strong(Locked locked) {
        double highest = heard().stream().mapToDouble(this::order).max().orElse(0);
        double[] sorted = locked.variance().clone();
        Arrays.sort(sorted);
        double usual = Math.sqrt(2 * sorted[(int) (0.8 * (sorted.length - 1))]);
        return 2 * Math.PI * highest * usual < STRONG_RAD;
    }

    /** Correction of the angle, slice by slice, from the change of phase from block to block. */
    private double[] bySpeed(int width, int hop) {
        int count = slices.blocks(width, hop);
        double[] above = new double[count - 1];
        double[] below = new double[count - 1];
        DemodulatedOrders.Turned turned = slices.under(new double[slices.slices()], 0);
        for (int k : heard()) {
            DemodulatedOrders.Blocks z = turned.blocks(k, width, hop);
            double variance = trust.componentVariance(k, width);
            for (int b = 0; b + 1 < count; b++) {
                double re = z.lagRe(b, 1);
                double im = z.lagIm(b, 1);
                double weight = Math.hypot(re, im) / variance;
                above[b] += weight * order(k) * Math.atan2(im, re) / (2 * Math.PI * hop * slices.sliceS());
                below[b] += weight * order(k) * order(k);
            }
        }
        double[] correction = new double[slices.slices()];
        double turnedBy = 0;
        for (int s = 0; s < correction.length; s++) {
            int b = Math.max(0, Math.min(count - 2, (s - width / 2) / hop));
            double hz = below[b] > 0 ? above[b] / below[b] : 0;
            correction[s] = turnedBy + hz * slices.sliceS() / 2;
            turnedBy += hz * slices.sliceS();
        }
        return correction;
    }

    private Locked byPhase(double[] correction, double ratioError, int width, int hop) {
        int count = slices.blocks(width, hop);
        double[] window = DemodulatedOrders.hann(width);
        double[] time = new double[count];
        double[] current = new double[count];
        for (int b = 0; b < count; b++) {
            time[b] = slices.timeS(b * hop) + (width - 1) / 2.0 * slices.sliceS();
            current[b] = weighed(window, correction, b * hop);
        }
        double[] above = new double[count];
        double[] below = new double[count];
        List<Integer> heard = heard();
        double[][] residual = new double[heard.size()][count];
        double[][] weight = new double[heard.size()][count];
        DemodulatedOrders.Turned turned = slices.under(correction, ratioError);
        for (int k = 0; k < heard.size(); k++) {
            int tone = heard.get(k);
            readPhases(
                    turned.blocks(tone, width, hop),
                    trust.componentVariance(tone, width),
                    2 * Math.PI * order(tone),
                    residual[k],
                    weight[k]);
            addTo(above, below, residual[k], weight[k]);
        }
        double[] revolutions = new double[count];
        double[] variance = new double[count];
        double least = leastInformation(below);
        for (int b = 0; b < count; b++) {
            double off = below[b] > 0 ? above[b] / below[b] : 0;
            revolutions[b] = start.revolutionsAt(time[b]) + current[b] + off;
            // Half-overlapped Hann blocks share noise: counted as independent they would seem 4/3 as good.
            variance[b] = 4.0 / 3.0 / Math.max(below[b], least);
        }
        trust.judge(heard, residual, weight, above, below);
        double from = stretch.fromS();
        double to = stretch.toS();
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

    private static void addTo(double[] above, double[] below, double[] residual, double[] weight) {
        for (int b = 0; b < above.length; b++) {
            above[b] += weight[b] * residual[b];
            below[b] += weight[b];
        }
    }

    private static double weighed(double[] window, double[] values, int from) {
        double sum = 0;
        for (int i = 0; i < window.length; i++) {
            sum += window[i] * values[from + i];
        }
        return sum;
    }

    /**
     * Phases of one tone against its mean over the run.
     *
     * @param variance of one component of a block's amplitude
     * @param turn radians of the tone per revolution
     * @param residual filled: error of the track, revolutions, by block
     * @param weight filled: one over its variance
     */
    private static void readPhases(
            DemodulatedOrders.Blocks z, double variance, double turn, double[] residual, double[] weight) {
        double re = 0;
        double im = 0;
        for (int b = 0; b < z.size(); b++) {
            re += z.re(b);
            im += z.im(b);
        }
        double norm = Math.max(Math.hypot(re, im), 1e-300);
        re /= norm;
        im /= norm;
        for (int b = 0; b < z.size(); b++) {
            double along = z.re(b) * re + z.im(b) * im;
            double across = z.im(b) * re - z.re(b) * im;
            double signal = Math.max(z.power(b) - 2 * variance, 0.02 * z.power(b));
            residual[b] = Math.atan2(across, along) / turn;
            weight[b] = turn * turn * signal / variance;
        }
    }

    /** A block without samples still gets a (tiny) weight, so that the smoother runs on through a gap. */
    private static double leastInformation(double[] information) {
        double most = Arrays.stream(information).max().orElse(0);
        return Math.max(1e-8 * most, 1e-12);
    }
}
