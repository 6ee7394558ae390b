package evenblade.measure.speed;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.numeric.DriftSmoother;
import evenblade.input.recording.Channel;
import evenblade.input.recording.Recording;
import evenblade.machine.installation.OrderTable;
import evenblade.measure.signal.BandLimit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** Finds the propeller's speed from the lines in a recording. */
public final class SpeedFinder {
    /** Mean power over the floor from which on a line may be locked on. */
    private static final double LOCK_FROM = 4;
    /** Where the phase track strays further than this from the path, it has lost the lines. */
    private static final double MOST_STRAY = 0.02;
    /** Room kept above the highest line at the fastest speed looked at. */
    private static final double HIGHEST_LINE_MARGIN = 1.02;

    private static final double SECONDS_A_MINUTE = 60;

    private final Recording recording;
    private final List<Channel> channels;
    private final OrderTable table;
    private final Comb comb;
    private final SpeedPrior expectation;

    private SpeedFinder(Recording recording, List<Channel> channels, OrderTable table, SpeedPrior expectation) {
        Comb comb = Comb.of(table);
        this.recording =
                BandLimit.of(recording, channels, comb.highestOrder() * expectation.toHz() * HIGHEST_LINE_MARGIN);
        this.channels = this.recording.channels();
        this.table = table;
        this.comb = comb;
        this.expectation = expectation;
    }

    /**
     * Finds the speed.
     *
     * @param recording at a rate at which every order of interest lies in range
     * @param channels the channels to listen to, together; at least one
     * @param table the lines to look for
     * @param expectation where to look
     */
    public static SpeedResult find(
            Recording recording, List<Channel> channels, OrderTable table, SpeedPrior expectation) {
        return new SpeedFinder(recording, channels, table, expectation).find();
    }

    /**
     * The answer where no line was detected in any dwell at the speed found: what the search met then was chance, and
     * the entered speed is all there is. What was said of a mark still holds.
     */
    public static SpeedResult notBorneOut(SpeedResult found, Recording recording, SpeedPrior expectation) {
        SpeedResult entered = Unconfirmed.result(
                recording,
                expectation,
                Fact.of(
                        SpeedFact.NOT_BORNE_OUT,
                        Measure.PROPELLER_RPM.of(
                                found.main().map(Dwell::propellerHz).orElse(0.0) * SECONDS_A_MINUTE)),
                SpeedResult.Origin.ENTERED);
        List<Warning> warnings = new ArrayList<>(entered.warnings());
        found.warnings().stream()
                .filter(w -> w.code() == WarningCode.MARK_WITHOUT_PULSES)
                .forEach(warnings::add);
        return new SpeedResult(
                entered.origin(),
                entered.confirmed(),
                entered.doubt(),
                entered.track(),
                entered.main(),
                entered.dwells(),
                entered.ratioCorrection(),
                warnings);
    }

    private SpeedResult find() {
        double usable = Recording.USABLE_SHARE_OF_RATE * recording.time().rateHz();
        double upTo = Math.min(usable, comb.highestOrder() * expectation.toHz() * HIGHEST_LINE_MARGIN);
        WhitenedSpectrogram frames = WhitenedSpectrogram.of(recording, channels, upTo);
        PathSearch search = new PathSearch(frames, comb);
        Evidence.Verdict verdict = new Evidence(frames, comb).judge(search, expectation.fromHz(), expectation.toHz());
        if (!verdict.confirmed()) {
            return unconfirmed(doubt(verdict));
        }
        PathSearch.Path path =
                search.best(IntStream.range(0, frames.frames()).toArray(), expectation.fromHz(), expectation.toHz());
        AmbiguityCheck rivals = AmbiguityCheck.of(frames, comb, path, expectation);
        if (rivals.undecided() && expectation.enteredPropellerHz().isEmpty()) {
            return unconfirmed(rivals.fact(table.ratio()));
        }
        List<Warning> warnings = new ArrayList<>();
        if (rivals.undecided()) {
            warnings.add(Warning.of(WarningCode.SPEED_AMBIGUOUS, Subject.Whole.RECORDING, rivals.fact(table.ratio())));
        }
        SpeedTrack start = trackThrough(frames, path);
        PhaseLock.Locked locked = PhaseLock.lock(
                recording, channels, candidates(frames, comb, path), start, frames::appearsAtHz, table.exactRatio());
        TrackCoverage support = TrackCoverage.of(search, comb, path, frames);
        if (locked.sound() && strays(locked.track(), start, support)) {
            warnings.add(Warning.of(WarningCode.PHASE_LOCK_LOST, Subject.Whole.RECORDING));
            locked = PhaseLock.Locked.not(start);
        }
        if (locked.ratioCorrection() != 0) {
            warnings.add(Warning.of(
                    WarningCode.RATIO_CORRECTED,
                    Subject.Whole.INSTALLATION,
                    Measure.NUMBER.of(table.ratio() * (1 + locked.ratioCorrection())),
                    Measure.SHARE.of(Math.abs(locked.ratioCorrection())),
                    Fact.of(locked.ratioCorrection() > 0 ? SpeedFact.LARGER : SpeedFact.SMALLER)));
        }
        return new DwellSpeeds(locked, start, frames, support).result(warnings);
    }

    private static Fact doubt(Evidence.Verdict verdict) {
        return Fact.of(verdict.onlyMains() ? SpeedFact.ONLY_MAINS : SpeedFact.NO_LINES);
    }

    private SpeedResult unconfirmed(Fact doubt) {
        return Unconfirmed.result(recording, expectation, doubt, SpeedResult.Origin.ENTERED);
    }

    private SpeedTrack trackThrough(WhitenedSpectrogram frames, PathSearch.Path path) {
        int n = path.hz().length;
        double from = recording.time().at(0);
        double to = from + recording.time().durationS();
        if (n == 1) {
            return KnotTrack.constant(path.hz()[0], from, to);
        }
        double[] time = new double[n];
        double[] hz = new double[n];
        for (int i = 0; i < n; i++) {
            time[i] = frames.centreS(i);
            double sum = 0;
            double weight = 0;
            for (int k = Math.max(0, i - 1); k <= Math.min(n - 1, i + 1); k++) {
                double w = k == i ? 2 : 1;
                sum += w * path.hz()[k];
                weight += w;
            }
            hz[i] = sum / weight;
        }
        return KnotTrack.ofSpeeds(time, hz, from, to);
    }

    /**
     * Lines to lock on: those that stand out, folded ones among them, and whether a neighbour leaks into
     * them as they move past each other.
     */
    private List<DemodulatedOrders.Tone> candidates(WhitenedSpectrogram frames, Comb comb, PathSearch.Path path) {
        List<DemodulatedOrders.Tone> chosen = new ArrayList<>();
        for (int c = 0; c < channels.size(); c++) {
            List<Standing> standing = new ArrayList<>();
            for (Comb.ExpectedLine tooth : comb.teeth()) {
                Standing seen = Standing.of(frames, c, tooth, path);
                if (seen.frames() > frames.frames() / 2 && seen.overFloor() > LOCK_FROM) {
                    standing.add(seen);
                }
            }
            for (Standing own : standing) {
                double leakage = 0;
                for (Standing other : standing) {
                    if (other != own) {
                        leakage += other.power() * own.leakageFrom(other, frames, path);
                    }
                }
                chosen.add(new DemodulatedOrders.Tone(
                        c,
                        own.tooth().order(),
                        own.tooth().line().of(),
                        own.density(),
                        leakage < Leakage.MOST * own.power()));
            }
        }
        return chosen;
    }

    /** A line of the comb as the short spectra of one channel show it along a path. */
    private record Standing(Comb.ExpectedLine tooth, int frames, double overFloor, double density) {
        static Standing of(WhitenedSpectrogram frames, int channel, Comb.ExpectedLine tooth, PathSearch.Path path) {
            double sum = 0;
            double density = 0;
            int n = 0;
            for (int f = 0; f < frames.frames(); f++) {
                double own = tooth.order() * path.hz()[f];
                if (frames.inRange(own) || frames.folded(own)) {
                    double frequency = frames.appearsAtHz(own);
                    sum += frames.overFloor(channel, f, frequency);
                    density += frames.floorDensity(channel, frequency);
                    n++;
                }
            }
            return new Standing(tooth, n, n == 0 ? 0 : sum / n, n == 0 ? 0 : density / n);
        }

        double power() {
            return overFloor * density;
        }

        /** Mean share of the other's power that a block's window lets through at this line. */
        double leakageFrom(Standing other, WhitenedSpectrogram frames, PathSearch.Path path) {
            double sum = 0;
            double blockS = Math.min(1, frames.lengthS());
            for (double hz : path.hz()) {
                double apart =
                        Math.abs(frames.appearsAtHz(tooth.order() * hz) - frames.appearsAtHz(other.tooth.order() * hz));
                sum += Leakage.ofHann(apart * blockS);
            }
            return sum / path.hz().length;
        }
    }

    /** Whether the phase track has left the path in a tenth of the time in which the lines bear the path out. */
    private static boolean strays(SpeedTrack track, SpeedTrack start, TrackCoverage support) {
        double[] borneOutS = support.borneOutS();
        int off = 0;
        for (double t : borneOutS) {
            off += Math.abs(track.propellerHzAt(t) / start.propellerHzAt(t) - 1) > MOST_STRAY ? 1 : 0;
        }
        return 10 * off > borneOutS.length;
    }

    /** Turns angle readings into dwells, each smoothed by itself, and one track through all. */
    private record DwellSpeeds(
            PhaseLock.Locked locked, SpeedTrack start, WhitenedSpectrogram frames, TrackCoverage support) {
        SpeedResult result(List<Warning> warnings) {
            List<Dwell> dwells = new ArrayList<>();
            SpeedTrack whole = locked.track();
            double[] time = locked.time();
            double[] level = new double[time.length];
            double[] rate = new double[time.length];
            for (int i = 0; i < time.length; i++) {
                level[i] = whole.revolutionsAt(time[i]);
                rate[i] = whole.propellerHzAt(time[i]);
            }
            List<DwellFinder.Stretch> stretches =
                    support.borneOut(DwellFinder.find(whole), DwellFinder.shortest(whole.toS() - whole.fromS()));
            support.warning().ifPresent(warnings::add);
            for (DwellFinder.Stretch stretch : stretches) {
                dwells.add(locked.sound() ? smoothed(stretch, level, rate) : plain(stretch));
            }
            SpeedTrack track = locked.sound() ? new KnotTrack(time, level, rate, whole.fromS(), whole.toS()) : whole;
            if (dwells.isEmpty()) {
                warnings.add(NoDwell.warning());
            }
            Dwell mean = dwells.stream()
                    .max(java.util.Comparator.comparingDouble(Dwell::durationS))
                    .orElseGet(() -> plain(new DwellFinder.Stretch(whole.fromS(), whole.toS())));
            return new SpeedResult(
                    SpeedResult.Origin.SIGNAL,
                    true,
                    Optional.empty(),
                    track,
                    Optional.of(mean),
                    dwells,
                    locked.ratioCorrection(),
                    warnings);
        }

        private Dwell smoothed(DwellFinder.Stretch stretch, double[] level, double[] rate) {
            double[] time = locked.time();
            int first = 0;
            while (first < time.length && time[first] < stretch.fromS()) {
                first++;
            }
            int end = first;
            while (end < time.length && time[end] <= stretch.toS()) {
                end++;
            }
            if (end - first < 3) {
                return plain(stretch);
            }
            DriftSmoother.Smoothed smooth = DriftSmoother.smooth(
                    java.util.Arrays.copyOfRange(time, first, end),
                    java.util.Arrays.copyOfRange(locked.revolutions(), first, end),
                    java.util.Arrays.copyOfRange(locked.variance(), first, end),
                    stretch.fromS(),
                    stretch.toS());
            double min = Double.POSITIVE_INFINITY;
            double max = 0;
            for (int i = first; i < end; i++) {
                level[i] = smooth.level().get(i - first);
                rate[i] = smooth.rate().get(i - first);
                min = Math.min(min, rate[i]);
                max = Math.max(max, rate[i]);
            }
            return new Dwell(
                    stretch.fromS(), stretch.toS(), smooth.meanRate(), smooth.meanRateStandardError(), min, max);
        }

        private Dwell plain(DwellFinder.Stretch stretch) {
            SpeedTrack track = locked.track();
            double mean =
                    (track.revolutionsAt(stretch.toS()) - track.revolutionsAt(stretch.fromS())) / stretch.lengthS();
            double min = Double.POSITIVE_INFINITY;
            double max = 0;
            int steps = 200;
            for (int i = 0; i <= steps; i++) {
                double hz = track.propellerHzAt(stretch.fromS() + i * stretch.lengthS() / steps);
                min = Math.min(min, hz);
                max = Math.max(max, hz);
            }
            // A line's place in a short spectrum is good to about a twentieth of the frame's resolution.
            double independent = Math.max(1, stretch.lengthS() / frames.lengthS());
            double error = 0.05 / frames.lengthS() / Math.sqrt(independent);
            return new Dwell(stretch.fromS(), stretch.toS(), mean, error, min, max);
        }
    }
}
