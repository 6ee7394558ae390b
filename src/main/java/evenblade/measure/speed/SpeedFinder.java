package evenblade.measure.speed;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value.Count;
import evenblade.base.fact.Value.Listed;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.input.recording.Channel;
import evenblade.input.recording.Recording;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.OrderTable;
import evenblade.measure.signal.BandLimit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;

/** Finds the propeller's speed from the lines in a recording. */
public final class SpeedFinder {
    /** Where the phase track strays further than this from the path, it has lost the lines. */
    private static final double MOST_STRAY = 0.02;

    private static final Set<SpeedDoubt> TOO_FEW =
            Set.of(SpeedDoubt.TWO_LINES, SpeedDoubt.ONE_SHAFT, SpeedDoubt.ONE_SERIES);

    /** Doubts that leave open whose lines stand there, or are said of this machine's own. */
    private static final Set<SpeedDoubt> UNDECIDED = Set.of(
            SpeedDoubt.ONE_SHAFT,
            SpeedDoubt.ONE_SERIES,
            SpeedDoubt.OTHER_SPEED,
            SpeedDoubt.PROPELLER_HIDDEN,
            SpeedDoubt.ENGINE_HIDDEN);

    private static final int STRAY_PLACES = 100; // per cents of the stretch
    /** Room kept above the highest line at the fastest speed looked at. */
    private static final double HIGHEST_LINE_MARGIN = 1.02;

    /** Speeds further apart than this, in logarithm, aren't the same one in short spectra. */
    private static final double OTHER = 0.04;
    /** A line's place in a short spectrum is good to a twentieth of the frame's resolution; twice that for 95 %. */
    private static final double PLACE = 0.1;

    private final Recording recording;
    private final List<Channel> channels;
    private final OrderTable table;
    private final Comb comb;
    private final SpeedPrior expectation;
    /** Where the highest line lies at the fastest speed looked at. */
    private final double highestHz;

    private SpeedFinder(Recording recording, List<Channel> channels, OrderTable table, SpeedPrior expectation) {
        Comb comb = Comb.of(table);
        this.highestHz = comb.highestOrder() * expectation.toHz() * HIGHEST_LINE_MARGIN;
        this.recording = BandLimit.of(recording, channels, highestHz);
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
     * The speed at the end of a recording of a second or so, to steer by: no more is asked than which speed explains the
     * latest short spectra best, and whether those bear it out by themselves.
     *
     * @param recording {@link SpeedNow#STRETCH_S} long or a little more
     * @return empty where it is shorter than a frame
     */
    public static Optional<SpeedNow> now(
            Recording recording, List<Channel> channels, OrderTable table, SpeedPrior expectation) {
        return recording.time().durationS() < SpeedNow.FRAME_S
                ? Optional.empty()
                : Optional.of(new SpeedFinder(recording, channels, table, expectation).now());
    }

    private SpeedNow now() {
        WhitenedSpectrogram frames = WhitenedSpectrogram.of(recording, channels, upToHz(), SpeedNow.FRAME_S);
        PathSearch search = new PathSearch(frames, comb, expectation);
        PathSearch.Path path =
                search.best(IntStream.range(0, frames.frames()).toArray(), expectation.fromHz(), expectation.toHz());
        int last = path.hz().length - 1;
        int before = Math.max(0, last - 1);
        double hz = path.hz()[last];
        double total = 0;
        for (int i = 0; i <= last; i++) {
            total += search.evidence(i, path.hz()[i]);
        }
        double evidence = Math.min(search.evidence(before, path.hz()[before]), search.evidence(last, hz));
        double middleS = frames.centreS(last);
        return new SpeedNow(
                middleS - SpeedNow.FRAME_S / 2,
                middleS + SpeedNow.FRAME_S / 2,
                hz,
                PLACE / SpeedNow.FRAME_S + Math.abs(hz - path.hz()[before]),
                evidence,
                total > 0 ? search.rival(hz, OTHER) / total : 1);
    }

    private double upToHz() {
        double usable = Recording.USABLE_SHARE_OF_RATE * recording.time().rateHz();
        return Math.min(usable, highestHz);
    }

    /**
     * The answer where no line was detected in any dwell at the speed found: what the search met then was chance, and
     * the entered speed is all there is. What was said of a mark still holds.
     */
    public static SpeedResult notBorneOut(SpeedResult found, Recording recording, SpeedPrior expectation) {
        SpeedResult entered =
                Unconfirmed.result(recording, expectation, SpeedDoubt.NOTHING_DETECTED, found.otherMachine());
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
                entered.doubtful(),
                entered.otherMachine(),
                entered.ratioCorrection(),
                warnings);
    }

    private SpeedResult find() {
        WhitenedSpectrogram frames = WhitenedSpectrogram.of(recording, channels, upToHz());
        PathSearch search = new PathSearch(frames, comb, expectation);
        StretchJudge judge = new StretchJudge(frames, table, comb, expectation);
        PathSearch.Path first =
                search.best(IntStream.range(0, frames.frames()).toArray(), expectation.fromHz(), expectation.toHz());
        PathSearch.Path path =
                judge.putRight(first, DwellFinder.find(trackThrough(frames, recording, first.hz())), search);
        SpeedTrack start = trackThrough(frames, recording, path.hz());
        List<Warning> warnings = new ArrayList<>();
        TrackCoverage support = TrackCoverage.of(search, path, frames);
        List<DwellFinder.Stretch> stretches =
                support.borneOut(DwellFinder.find(start), DwellFinder.shortest(start.toS() - start.fromS()));
        BeltLock.Scene scene = new BeltLock.Scene(recording, channels, frames, path, start, expectation);
        HeardStretches heard = HeardStretches.of(scene, comb, table.exactness(), judge, stretches);
        Optional<BetterEntry> better = heard.better();
        List<DoubtfulDwell> doubtful = new ArrayList<>(heard.doubtful());
        SmoothedDwells speeds = new SmoothedDwells(start, frames.lengthS());
        SmoothedDwells cranks = new SmoothedDwells(start, frames.lengthS());
        boolean apart = false;
        List<Dwell> dwells = new ArrayList<>();
        double ratioCorrection = 0;
        double longestS = 0;
        boolean lost = false;
        for (StretchLock lock : heard.locks()) {
            DwellFinder.Stretch stretch = lock.stretch();
            Confirmation.Judgement judgement = lock.judged().judgement();
            PhaseLock.Locked locked = lock.propeller();
            if (locked.sound() && strays(locked.track(), start, stretch)) {
                lost = true;
                locked = PhaseLock.Locked.not(start, stretch);
            }
            Optional<SecondEngine> other = folds(judgement.propellerHz(), frames)
                    ? Optional.empty()
                    : SecondEngine.beside(
                            recording,
                            channels,
                            lock.slices().tones(),
                            locked,
                            table.ratio(),
                            lock.judged().humHz());
            other.map(engine -> engine.told(stretch, 60 * judgement.propellerHz() * table.ratio()))
                    .ifPresent(warnings::add);
            if (other.filter(SecondEngine::apart).isPresent()) {
                doubtful.add(judgement.doubted(stretch, SpeedDoubt.SECOND_ENGINE));
                continue;
            }
            Dwell alone = speeds.of(locked).confirmedBy(judgement.by());
            Dwell dwell = other.map(engine -> engine.unsure(alone)).orElse(alone);
            Dwell ofCrank = cranks.of(lock.belt().map(BeltLock::crank).orElse(locked.ofCrank()));
            boolean creeps = lock.belt().isPresent();
            apart |= creeps;
            double correction = creeps ? BeltTrack.ratioCorrection(dwell, ofCrank) : locked.ratioCorrection();
            if (correction != 0 && stretch.lengthS() > longestS) {
                ratioCorrection = correction;
                longestS = stretch.lengthS();
            }
            dwells.add(dwell);
        }
        doubtful.sort(Comparator.comparingDouble(DoubtfulDwell::fromS));
        if (lost) {
            warnings.add(Warning.of(WarningCode.PHASE_LOCK_LOST, Subject.Whole.RECORDING));
        }
        better.map(this::told).ifPresent(warnings::add);
        Optional<Dwell> main = dwells.stream().max(Comparator.comparingDouble(Dwell::durationS));
        if (main.isEmpty()) {
            Confirmation.Judgement judgement = stretches.stream()
                    .max(Comparator.comparingDouble(DwellFinder.Stretch::lengthS))
                    .map(stretch -> judge.of(stretch, path))
                    .orElseGet(() -> judge.of(path))
                    .judgement();
            boolean twoEngines = doubtful.stream().anyMatch(dwell -> dwell.doubt() == SpeedDoubt.SECOND_ENGINE);
            SpeedDoubt doubt = judgement.doubts().stream()
                    .findFirst()
                    .or(() -> doubtful.stream()
                            .max(Comparator.comparingDouble(dwell -> dwell.toS() - dwell.fromS()))
                            .map(DoubtfulDwell::doubt))
                    .orElse(SpeedDoubt.NEVER_STEADY);
            boolean undecided = UNDECIDED.contains(doubt) || better.isPresent();
            return Unconfirmed.result(
                            recording,
                            expectation,
                            doubt,
                            twoEngines
                                    ? Optional.of(true)
                                    : undecided ? Optional.empty() : judge.otherMachine(path, false))
                    .with(warnings)
                    .with(wouldFit(judgement).stream().toList());
        }
        support.warning().ifPresent(warnings::add);
        notAsRead(dwells).ifPresent(warnings::add);
        SpeedTrack track = apart ? BeltTrack.of(speeds.track(), cranks.track(), ratioCorrection) : speeds.track();
        ratioMoves(track, main.get(), ratioCorrection).ifPresent(warnings::add);
        return new SpeedResult(
                SpeedResult.Origin.SIGNAL,
                true,
                Optional.empty(),
                track,
                main,
                dwells,
                doubtful,
                judge.otherMachine(judge.part(stretch(main.get()), path), true),
                ratioCorrection,
                warnings);
    }

    /** What speed a few lines point to, where they are too few to confirm it. */
    private Optional<Warning> wouldFit(Confirmation.Judgement judgement) {
        return judgement.doubts().stream()
                .findFirst()
                .filter(TOO_FEW::contains)
                .map(doubt -> Warning.of(
                        WarningCode.SPEED_WOULD_FIT,
                        Subject.Whole.RECORDING,
                        Measure.ENGINE_RPM.of(60 * judgement.propellerHz() * table.ratio()),
                        Listed.quoted(
                                judgement.by().stream().map(OrderLine::name).toList())));
    }

    /** Whether lines fold down: those beat with others of their own machine, at rates that its wander smears. */
    private boolean folds(double propellerHz, WhitenedSpectrogram frames) {
        return comb.teeth().stream().anyMatch(tooth -> frames.folded(tooth.order() * propellerHz));
    }

    private static DwellFinder.Stretch stretch(Dwell dwell) {
        return new DwellFinder.Stretch(dwell.fromS(), dwell.toS());
    }

    private Warning told(BetterEntry better) {
        return better.blades().isPresent()
                ? Warning.of(
                        WarningCode.OTHER_BLADES_FIT,
                        Subject.Whole.INSTALLATION,
                        new Count(better.blades().getAsInt()),
                        new Count(table.blades()))
                : Warning.of(
                        WarningCode.OTHER_RATIO_FITS,
                        Subject.Whole.INSTALLATION,
                        Measure.NUMBER.of(better.ratio().orElseThrow()),
                        Measure.NUMBER.of(table.ratio()));
    }

    /** Where no dwell has the speed that was entered: one of both is wrong, and the lines aren't. */
    private Optional<Warning> notAsRead(List<Dwell> dwells) {
        return expectation
                .entered()
                .filter(entered -> dwells.stream().noneMatch(d -> SpeedPrior.agree(d.propellerHz(), entered)))
                .map(entered -> Warning.of(
                        WarningCode.SPEED_NOT_AS_READ,
                        Subject.Whole.RECORDING,
                        Measure.ENGINE_RPM.of(60 * dwells.get(0).propellerHz() * table.ratio()),
                        Measure.ENGINE_RPM.of(60 * entered * table.ratio())));
    }

    /** That the ratio wanders, or else that it is another one throughout. */
    private Optional<Warning> ratioMoves(SpeedTrack track, Dwell dwell, double correction) {
        double wander = track instanceof BeltTrack belt ? belt.wander(dwell) : 0;
        return wander > BeltTrack.WORTH_SAYING
                ? Optional.of(Warning.of(
                        WarningCode.RATIO_WANDERS,
                        Subject.Whole.RECORDING,
                        Measure.SHARE.of(wander),
                        Measure.NUMBER.of(table.ratio() * (1 + correction))))
                : ratioCorrected(correction);
    }

    private Optional<Warning> ratioCorrected(double correction) {
        return correction == 0
                ? Optional.empty()
                : Optional.of(Warning.of(
                        WarningCode.RATIO_CORRECTED,
                        Subject.Whole.INSTALLATION,
                        Measure.NUMBER.of(table.ratio() * (1 + correction)),
                        Measure.SHARE.of(Math.abs(correction)),
                        Fact.of(correction > 0 ? SpeedFact.LARGER : SpeedFact.SMALLER)));
    }

    /** A track through the speeds of all frames of a recording. */
    static SpeedTrack trackThrough(WhitenedSpectrogram frames, Recording recording, double[] hz) {
        double[] centreS =
                IntStream.range(0, frames.frames()).mapToDouble(frames::centreS).toArray();
        double from = recording.time().at(0);
        return trackThrough(centreS, hz, from, from + recording.time().durationS());
    }

    /** A track through the speeds of frames, each smoothed with its neighbours by weights of 1, 2, 1. */
    static SpeedTrack trackThrough(double[] centreS, double[] pathHz, double fromS, double toS) {
        int n = pathHz.length;
        if (n == 1) {
            return KnotTrack.constant(pathHz[0], fromS, toS);
        }
        double[] hz = new double[n];
        for (int i = 0; i < n; i++) {
            double sum = 0;
            double weight = 0;
            for (int k = Math.max(0, i - 1); k <= Math.min(n - 1, i + 1); k++) {
                double w = k == i ? 2 : 1;
                sum += w * pathHz[k];
                weight += w;
            }
            hz[i] = sum / weight;
        }
        return KnotTrack.ofSpeeds(centreS, hz, fromS, toS);
    }

    /** Whether the phase track has left the path in a tenth of a stretch. */
    static boolean strays(SpeedTrack track, SpeedTrack start, DwellFinder.Stretch stretch) {
        int off = 0;
        for (int i = 0; i < STRAY_PLACES; i++) {
            double t = stretch.fromS() + (i + 0.5) * stretch.lengthS() / STRAY_PLACES;
            off += Math.abs(track.propellerHzAt(t) / start.propellerHzAt(t) - 1) > MOST_STRAY ? 1 : 0;
        }
        return 10 * off > STRAY_PLACES;
    }
}
