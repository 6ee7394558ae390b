package evenblade.measure.speed;

import evenblade.base.numeric.DriftSmoother;
import evenblade.machine.installation.Shaft;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
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
    private static final int FIRST_HOP = DemodulatedOrders.SLICES_PER_BLOCK / 8; // ours: a quarter of the first blocks
    private static final int ROUNDS_ALONE = 3; // ours: the track is refined together with the other shaft
    /** Share of the crank's information that the propeller's lines need to lead: a tenth of its precision. */
    private static final double LEAST_SHARE = 0.01;
    /** Crank lines of which less stands still beside the propeller's hang on a ratio that wanders: they would pull the track. */
    private static final double LEAST_COHERENCE = 0.7;
    /** The propeller's own lines stand as still as this under a track that is theirs; under one that slips to 0.6 and less. */
    private static final double SURE_COHERENCE = 0.8;
    /** Revolutions by which a round has to move the track anywhere for another to be worth while. */
    private static final double STILL = 2e-4;
    /** Phase of the strongest line that blocks half as long must still carry, radians. */
    private static final double STRONG_RAD = 0.2;

    private DemodulatedOrders slices;
    private final SpeedTrack start;
    private final DwellFinder.Stretch stretch;
    private final DoubleUnaryOperator appearsAt;
    private ToneTrust trust;
    /** Whether a tone takes part: no stronger neighbour leaks into its blocks. */
    private final boolean[] clear;
    /** Whether a tone is left out for good: the ratio of its shaft wanders. */
    private final boolean[] left;
    /** Whether the ratio wanders, so that one shaft's lines are left out. */
    private boolean wanders;
    /** The shaft that is listened to alone for the time being. */
    private Optional<Shaft> alone = Optional.empty();

    /**
     * Readings of the propeller's angle.
     *
     * @param held where the lines hold still under the track: a move of the throttle at either end isn't in it
     * @param time of each reading, seconds
     * @param revolutions measured angle
     * @param variance of it
     * @param track through them, smoothed over the whole run
     * @param ratioCorrection share by which the reduction ratio is larger than entered; 0 where it
     *     can't be told from none
     * @param sound whether any line carried phase
     * @param drifts whether the speed wanders more than the readings' noise explains
     * @param followed share of the signal of its lines that stands still under the track; 1 where the speed hardly drifts
     */
    record Locked(
            DwellFinder.Stretch held,
            double[] time,
            double[] revolutions,
            double[] variance,
            SpeedTrack track,
            double ratioCorrection,
            boolean sound,
            boolean drifts,
            double followed) {
        /** The track as it was, where no line carried phase. */
        static Locked not(SpeedTrack start, DwellFinder.Stretch stretch) {
            return new Locked(stretch, new double[0], new double[0], new double[0], start, 0, false, false, 1);
        }

        /** The crank's angle over the ratio entered, where both shafts were followed together at another one. */
        Locked ofCrank() {
            double faster = 1 + ratioCorrection;
            return new Locked(
                    held,
                    time,
                    Arrays.stream(revolutions).map(turned -> faster * turned).toArray(),
                    Arrays.stream(variance).map(own -> faster * faster * own).toArray(),
                    track,
                    0,
                    sound,
                    drifts,
                    followed);
        }

        /**
         * Share of the signal of one shaft's lines that stands still under the track; empty where short spectra show none of them clear
         * of its neighbours.
         */
        OptionalDouble followed(DemodulatedOrders slices, Shaft shaft) {
            List<Integer> tones = IntStream.range(0, slices.tones().size())
                    .filter(k -> slices.tones().get(k).clear()
                            && slices.tones().get(k).shaft() == shaft)
                    .boxed()
                    .toList();
            return tones.isEmpty()
                    ? OptionalDouble.empty()
                    : OptionalDouble.of(RatioDrift.followed(
                            slices, corrected(slices, this), ratioCorrection, tones, 0, slices.slices()));
        }

        /** How still lines of some shafts that were heard at first stand under the track. */
        RatioDrift.Standing standing(DemodulatedOrders slices, Shaft... shafts) {
            return RatioDrift.standing(slices, corrected(slices, this), ratioCorrection, List.of(shafts));
        }
    }

    private PhaseLock(
            DemodulatedOrders slices, SpeedTrack start, DwellFinder.Stretch stretch, DoubleUnaryOperator appearsAt) {
        this.slices = slices;
        this.stretch = stretch;
        this.start = start;
        this.appearsAt = appearsAt;
        this.trust = new ToneTrust(slices);
        this.clear = new boolean[slices.tones().size()];
        this.left = new boolean[clear.length];
        for (int k = 0; k < clear.length; k++) {
            clear[k] = slices.tones().get(k).clear();
        }
    }

    /**
     * Locks on.
     *
     * @param slices of the lines that stand out
     * @param start the track so far
     * @param stretch of the recording, in which nobody moved the throttle: across a move phases slip by whole turns
     * @param appearsAt where a frequency appears in the recording
     * @param exactRatio whether the reduction ratio is known exactly
     */
    static Locked lock(
            DemodulatedOrders slices,
            SpeedTrack start,
            DwellFinder.Stretch stretch,
            DoubleUnaryOperator appearsAt,
            boolean exactRatio) {
        PhaseLock all = new PhaseLock(slices, start, stretch, appearsAt);
        if (all.heard().isEmpty() || slices.slices() < 2 * DemodulatedOrders.SLICES_PER_BLOCK) {
            return Locked.not(start, stretch);
        }
        Locked plain = all.plain();
        if (exactRatio) {
            return plain;
        }
        PhaseLock oneFirst = new PhaseLock(slices, start, stretch, appearsAt);
        return oneFirst.led()
                .filter(led -> oneFirst.wanders
                        ? led.standing(slices, Shaft.PROPELLER).coherence() > SURE_COHERENCE
                        : led.standing(slices, Shaft.values()).likelihood()
                                > plain.standing(slices, Shaft.values()).likelihood() + RatioDrift.LEAST_GAIN)
                .orElse(plain);
    }

    /**
     * Locks on anew, at a ratio that is known from elsewhere in the run, where a track found at the ratio entered is the crank's.
     *
     * @param crank that track
     * @param ratioError share by which the crank turns faster against the propeller than entered
     * @param slices of the lines that stand out
     */
    static Locked atRatio(
            Locked crank,
            double ratioError,
            DemodulatedOrders slices,
            SpeedTrack start,
            DwellFinder.Stretch stretch,
            DoubleUnaryOperator appearsAt) {
        PhaseLock lock = new PhaseLock(slices, start, stretch, appearsAt);
        return lock.together(lock.propellers(corrected(slices, crank), ratioError), ratioError);
    }

    /** All lines together from the start, at the ratio as it was entered. */
    private Locked plain() {
        return together(bySpeed(DemodulatedOrders.SLICES_PER_BLOCK / 2, FIRST_HOP), 0);
    }

    /**
     * One shaft's lines alone first: together with the other's at a ratio that is a little wrong, or wanders, a track
     * slips. Then those of the other, at the drift that brings them to a halt. Empty where only one shaft is heard, or the
     * other doesn't drift.
     */
    private Optional<Locked> led() {
        Optional<Shaft> base = base();
        if (base.isEmpty()) {
            return Optional.empty();
        }
        int width = DemodulatedOrders.SLICES_PER_BLOCK;
        alone = base;
        double[] correction = bySpeed(width / 2, FIRST_HOP);
        for (int round = 0; round < ROUNDS_ALONE; round++) {
            correction = corrected(slices, byPhase(correction, 0, width, width / 2));
        }
        alone = Optional.empty();
        List<Integer> others = heard().stream()
                .filter(k -> slices.tones().get(k).shaft() != base.get())
                .toList();
        RatioDrift drift = RatioDrift.of(slices, trust, correction, others);
        if (base.get() == Shaft.PROPELLER) {
            wanders = drift.coherence() < LEAST_COHERENCE;
            if (wanders) {
                others.forEach(k -> left[k] = true);
            }
            return wanders || drift.share() != 0 ? Optional.of(together(correction, drift.share())) : Optional.empty();
        }
        if (drift.share() == 0) {
            return Optional.empty();
        }
        // The crank's angle was taken for the propeller's.
        double ratioError = -drift.share() / (1 + drift.share());
        return Optional.of(together(propellers(correction, ratioError), ratioError));
    }

    /** What the track of the propeller adds, by that of the crank, which was taken for it. */
    private double[] propellers(double[] crank, double ratioError) {
        double[] correction = new double[crank.length];
        for (int s = 0; s < correction.length; s++) {
            correction[s] = (crank[s] - ratioError * slices.revolutions(s)) / (1 + ratioError);
        }
        return correction;
    }

    private Locked together(double[] first, double ratioError) {
        double[] correction = first;
        int width = DemodulatedOrders.SLICES_PER_BLOCK;
        Locked locked = null;
        for (int round = 0; round < ROUNDS; round++) {
            if (round == 3 && locked.drifts() && strong(locked)) {
                width = DemodulatedOrders.SLICES_PER_BLOCK / 2;
                reconsider(correction, ratioError, width);
            }
            locked = byPhase(correction, ratioError, width, width / 2);
            double[] before = correction;
            correction = corrected(slices, locked);
            double moved = 0;
            for (int s = 0; s < correction.length; s++) {
                moved = Math.max(moved, Math.abs(correction[s] - before[s]));
            }
            if (round > 2 && moved < STILL) {
                break;
            }
            if (round == 1) {
                reconsider(correction, ratioError, width);
                slices = slices.apart(correction, ratioError);
                trust = new ToneTrust(slices);
            }
        }
        return held(locked, correction, ratioError, width);
    }

    /** Without the ends in which the lines don't hold still: there the throttle moves already, or still. */
    private Locked held(Locked locked, double[] correction, double ratioError, int width) {
        int hop = width / 2;
        double blockS = width * slices.sliceS();
        HoldEnds ends = HoldEnds.of(
                stillness(correction, ratioError, width, hop),
                blockS,
                stretch.beginsAtAMove(start),
                stretch.endsAtAMove(start));
        int first = ends.first();
        int end = ends.end();
        double from = first == 0 ? stretch.fromS() : locked.time()[first] - blockS / 2;
        double to = end == locked.time().length ? stretch.toS() : locked.time()[end - 1] + blockS / 2;
        double followed = locked.drifts()
                ? RatioDrift.followed(slices, correction, ratioError, heard(), first * hop, (end - 1) * hop + width)
                : 1;
        return new Locked(
                new DwellFinder.Stretch(from, to),
                Arrays.copyOfRange(locked.time(), first, end),
                Arrays.copyOfRange(locked.revolutions(), first, end),
                Arrays.copyOfRange(locked.variance(), first, end),
                locked.track(),
                locked.ratioCorrection(),
                locked.sound(),
                locked.drifts(),
                followed);
    }

    /** How much of the lines keeps its phase, block by block, by the weight that each line has in the lock. */
    private double[] stillness(double[] correction, double ratioError, int width, int hop) {
        double[] still = new double[slices.blocks(width, hop)];
        DemodulatedOrders.Turned turned = slices.under(correction, ratioError);
        for (int k : heard()) {
            DemodulatedOrders.Blocks z = turned.blocks(k, width, hop);
            double re = 0;
            double im = 0;
            for (int b = 0; b < still.length; b++) {
                re += z.re(b);
                im += z.im(b);
            }
            double weight = order(k) * order(k) / trust.componentVariance(k, width);
            for (int b = 0; b < still.length; b++) {
                still[b] += weight * (z.re(b) * re + z.im(b) * im);
            }
        }
        return still;
    }

    /** What a track adds to the angle of the one before, slice by slice. */
    private static double[] corrected(DemodulatedOrders slices, Locked locked) {
        double[] correction = new double[slices.slices()];
        for (int s = 0; s < correction.length; s++) {
            correction[s] = locked.track().revolutionsAt(slices.timeS(s)) - slices.revolutions(s);
        }
        return correction;
    }

    /**
     * The shaft whose lines the track is first locked on alone: the propeller's, whose speed is asked for, unless hardly
     * any of it is heard; none where only one is heard.
     */
    private Optional<Shaft> base() {
        double[] information = new double[2];
        DemodulatedOrders.Turned turned = slices.under(new double[slices.slices()], 0);
        int width = DemodulatedOrders.SLICES_PER_BLOCK / 2;
        for (int k : heard()) {
            DemodulatedOrders.Blocks z = turned.blocks(k, width, width);
            double power =
                    IntStream.range(0, z.size()).mapToDouble(z::power).average().orElse(0);
            double signal = Math.max(0, power / trust.componentVariance(k, width) - 2);
            information[slices.tones().get(k).shaft() == Shaft.PROPELLER ? 0 : 1] += order(k) * order(k) * signal;
        }
        if (information[0] == 0 || information[1] == 0) {
            return Optional.empty();
        }
        return Optional.of(information[0] > LEAST_SHARE * information[1] ? Shaft.PROPELLER : Shaft.CRANK);
    }

    private List<Integer> heard() {
        return IntStream.range(0, clear.length)
                .filter(k -> clear[k] && !left[k])
                .filter(k -> alone.filter(shaft -> slices.tones().get(k).shaft() != shaft)
                        .isEmpty())
                .boxed()
                .toList();
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
        double[] above = new double[count];
        double[] below = new double[count];
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
                stretch,
                time,
                revolutions,
                variance,
                new KnotTrack(time, level, rate, from, to),
                ratioError,
                true,
                smooth.drifts(),
                1);
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
