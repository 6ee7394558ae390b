package evenblade.face.app;

import evenblade.base.numeric.Phasor;
import evenblade.base.units.SignalUnit;
import evenblade.judge.findings.RunEvidence;
import evenblade.judge.findings.StaticEvidence;
import evenblade.judge.tie.JobTie;
import evenblade.judge.tie.JobTie.LeftOutRun;
import evenblade.judge.tie.SmoothestLayout;
import evenblade.judge.tie.TieAnswer;
import evenblade.judge.tie.TieRun;
import evenblade.judge.tie.TrackTie;
import evenblade.judge.tie.VibrationAndTrack;
import evenblade.judge.tracking.HubPattern;
import evenblade.judge.tracking.Layout;
import evenblade.judge.tracking.PitchReadings;
import evenblade.judge.tracking.StaticSide;
import evenblade.judge.tracking.SwapFit;
import evenblade.judge.tracking.TrackingSession;
import evenblade.keep.job.HubWeight;
import evenblade.keep.job.JobRecord;
import evenblade.keep.job.Kind;
import evenblade.keep.job.WeightsOn;
import evenblade.machine.installation.Installation;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.Level;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;

/**
 * Ties propeller 1× of a job's runs to the track that was marked before each.
 *
 * <p>One speed and one channel are used: the dwell of the first run nearest its mean speed, and of the channels the one
 * with most 1× there. Runs without a dwell within 2 % of that speed or without that channel are left out, and those whose
 * track isn't known, for something was changed between them and the marks before and after. So are runs with other balance
 * weights on than most runs had.
 */
final class TieOfJob {
    /** Dwells nearer than 2 % count as one speed, as where runs are compared. */
    private static final double SAME_SPEED = 0.02;

    /** A blade differs where its angle lies this many standard errors off the mean. */
    private static final double ERRORS_THAT_COUNT = 4;

    private final Installation installation;
    private final List<TrackingSession> sessions;
    private final List<PitchReadings> angles;
    private final List<Instant> changes;
    private final List<StaticEvidence.Track> spells;
    private final JobRecord record;

    private TieOfJob(JobRecord record, List<StaticEvidence.Track> spells) {
        this.record = record;
        this.installation = record.installation();
        this.spells = spells;
        this.changes = JudgeTracking.changes(record);
        sessions = JudgeTracking.sessions(record).stream()
                .map(StaticSide.MarkedTips::session)
                .toList();
        List<PitchReadings> read = JudgeTracking.pitches(record).stream()
                .map(StaticSide.BladeAngles::readings)
                .toList();
        // Angles alike within the reading error would only blur what goes with track.
        angles = read.stream().anyMatch(TieOfJob::differ) ? read : List.of();
    }

    /**
     * The tie; empty where no run has marks before it.
     *
     * @param spells what the tip marks say, one entry for each stretch without a change
     */
    static Optional<JobTie> of(JobRecord record, List<RunEvidence> runs, List<StaticEvidence.Track> spells) {
        Optional<Choice> choice =
                runs.stream().flatMap(run -> Choice.of(run).stream()).findFirst();
        return choice.flatMap(chosen -> new TieOfJob(record, spells).tie(runs, chosen));
    }

    private Optional<JobTie> tie(List<RunEvidence> runs, Choice choice) {
        List<TieRun> read = new ArrayList<>();
        List<Instant> marked = new ArrayList<>();
        List<LeftOutRun> leftOut = new ArrayList<>();
        List<HubWeight> usual = usualWeights(runs);
        for (RunEvidence run : runs) {
            Optional<TrackingSession> marks = marks(run);
            Optional<Level.Measured> once = choice.once(run);
            if (marks.isEmpty()) {
                leftOut.add(new LeftOutRun(run.ref().name(), LeftOutRun.Why.NO_MARKS));
            } else if (!weights(run).equals(usual)) {
                leftOut.add(new LeftOutRun(run.ref().name(), LeftOutRun.Why.OTHER_WEIGHTS_ON));
            } else if (once.isEmpty()) {
                leftOut.add(new LeftOutRun(run.ref().name(), LeftOutRun.Why.NOT_SEEN));
            } else {
                read.add(tieRun(run, once.get(), marks.get()));
                marked.add(marks.get().at());
            }
        }
        List<TieRun> tied = RunToRun.of(read, marked).within(read);
        if (tied.isEmpty()) {
            return Optional.empty();
        }
        TieAnswer answer = VibrationAndTrack.of(tied, installation.hubCounting());
        Optional<TrackTie> shown = answer instanceof TieAnswer.Tied done
                        && done.follows() == TieAnswer.Follows.TRACK
                        && done.tie().trackMatters()
                ? Optional.of(done.tie())
                : Optional.empty();
        return Optional.of(new JobTie(
                answer,
                60 * choice.propellerHz() * installation.reduction().ratio(),
                choice.channel(),
                choice.unit(),
                tied,
                tied.stream().allMatch(r -> r.phaseDegrees().isPresent()),
                installation.hubCounting(),
                installation.propeller().positionsCounted().isPresent(),
                shown.flatMap(this::smoothest),
                leftOut));
    }

    /** The marks that hold for a run: the last before it or else the first after it, with nothing changed in between. */
    private Optional<TrackingSession> marks(RunEvidence run) {
        return sessions.stream()
                .filter(s -> !s.at().isAfter(run.at()))
                .reduce((first, second) -> second)
                .filter(s -> unchangedBetween(s.at(), run.at()))
                .or(() -> sessions.stream()
                        .filter(s -> s.at().isAfter(run.at()))
                        .findFirst()
                        .filter(s -> unchangedBetween(run.at(), s.at())));
    }

    private boolean unchangedBetween(Instant one, Instant other) {
        return changes.stream().noneMatch(c -> c.isAfter(one) && c.isBefore(other));
    }

    /** The balance weights that most runs had on; of several alike those that came first. */
    private List<HubWeight> usualWeights(List<RunEvidence> runs) {
        Map<List<HubWeight>, Integer> runsWith = new LinkedHashMap<>();
        runs.forEach(run -> runsWith.merge(weights(run), 1, Integer::sum));
        int most = Collections.max(runsWith.values());
        return runsWith.entrySet().stream()
                .filter(e -> e.getValue() == most)
                .findFirst()
                .orElseThrow()
                .getKey();
    }

    private List<HubWeight> weights(RunEvidence run) {
        return record.standing(Kind.RUN).stream()
                .filter(event -> event.id().equals(run.ref().id()))
                .flatMap(event -> WeightsOn.during(record, event).stream())
                .flatMap(event -> WeightsOn.putOn(event).stream())
                .toList();
    }

    /** The layout that shakes least, of those that the marks since the last change can predict. */
    private Optional<SmoothestLayout> smoothest(TrackTie tie) {
        SwapFit fit = SwapFit.of(spells.get(spells.size() - 1).analysis().sessions());
        return fit.nothingSeparable() ? Optional.empty() : Optional.of(SmoothestLayout.of(tie, fit));
    }

    private static boolean differ(PitchReadings readings) {
        SortedMap<String, Double> errors = readings.standardErrorsDeg();
        return readings.deviationsDeg().entrySet().stream()
                .anyMatch(e -> Math.abs(e.getValue()) > ERRORS_THAT_COUNT * errors.get(e.getKey()));
    }

    private TieRun tieRun(RunEvidence run, Level.Measured once, TrackingSession marks) {
        double error = Double.isFinite(once.standardError()) ? once.standardError() : once.amplitude();
        return new TieRun(
                run.ref().name(),
                once.amplitude(),
                Math.max(error, Double.MIN_NORMAL),
                once.phaseDeg(),
                HubPattern.of(marks.marksMm()).first(),
                trackErrorMm(marks),
                pitch(run, marks.layout()),
                marks.at().toString(),
                marks.layout().blades());
    }

    /** Each part of (2/B)·Σ d·e^{−jθ} has the variance (4/B²)·(B/2)·var(d). */
    private static double trackErrorMm(TrackingSession marks) {
        double variance = marks.readings().stream()
                .mapToDouble(rounds -> Math.pow(marks.sigma().millimetres(), 2) / rounds.size())
                .average()
                .orElseThrow();
        return Math.sqrt(2 * variance / marks.readings().size());
    }

    /** Blade angles read last before the run, carried along with the blades to where they sat. */
    private Optional<Phasor> pitch(RunEvidence run, Layout layout) {
        return angles.stream()
                .filter(a -> !a.at().isAfter(run.at()))
                .reduce((first, second) -> second)
                .map(PitchReadings::deviationsDeg)
                .filter(byBlade -> byBlade.keySet().containsAll(layout.blades()))
                .map(byBlade -> HubPattern.of(along(byBlade, layout)).first());
    }

    private static List<Double> along(SortedMap<String, Double> byBlade, Layout layout) {
        return layout.blades().stream().map(byBlade::get).toList();
    }

    /**
     * Where the runs are held against each other.
     *
     * @param propellerHz speed
     * @param channel name of the channel
     * @param unit of its amplitudes
     */
    private record Choice(double propellerHz, String channel, SignalUnit unit) {
        static Optional<Choice> of(RunEvidence run) {
            if (!run.numbers().confirmed() || run.numbers().channels().isEmpty()) {
                return Optional.empty();
            }
            List<DwellOrders> dwells = run.numbers().channels().get(0).dwells();
            double mean = dwells.stream()
                    .mapToDouble(d -> d.dwell().propellerHz())
                    .average()
                    .orElse(0);
            return dwells.stream()
                    .min(Comparator.comparingDouble(d -> Math.abs(d.dwell().propellerHz() - mean)))
                    .map(d -> at(run, d.dwell().propellerHz(), dwells.indexOf(d)));
        }

        private static Choice at(RunEvidence run, double propellerHz, int dwell) {
            ChannelOrders most = run.numbers().channels().stream()
                    .max(Comparator.comparingDouble(c -> once(c.dwells().get(dwell))
                            .map(Level.Measured::amplitude)
                            .orElse(0.0)))
                    .orElseThrow();
            return new Choice(propellerHz, most.channel(), most.unit());
        }

        Optional<Level.Measured> once(RunEvidence run) {
            if (!run.numbers().confirmed()) {
                return Optional.empty();
            }
            return run.numbers().channels().stream()
                    .filter(c -> c.channel().equals(channel) && c.unit() == unit)
                    .flatMap(c -> c.dwells().stream())
                    .filter(d -> Math.abs(d.dwell().propellerHz() / propellerHz - 1) < SAME_SPEED)
                    .findFirst()
                    .flatMap(Choice::once);
        }

        private static Optional<Level.Measured> once(DwellOrders dwell) {
            return dwell.propellerOnce()
                    .filter(r -> r.inseparableFrom().isEmpty() && r.detected())
                    .map(r -> (Level.Measured) r.level());
        }
    }

    /**
     * How much propeller 1× differs between runs when nothing was changed, as a share of its size, in each of its two parts:
     * from the runs that were repeated without marking anew, pooled with what is usual.
     *
     * @param share standard deviation as a share of 1×
     */
    record RunToRun(double share) {
        /**
         * Usual scatter of a line between runs: wind, throttle, and a sensor that was taken off and put back, 6 % in common and
         * 3 % for each line by itself (seen in trials with real fixings; no published source).
         */
        private static final double USUAL = 0.06;

        /** So many repeats that is worth: a guess. */
        private static final double USUAL_WORTH = 3;

        /**
         * From repeats.
         *
         * @param runs in order of time
         * @param marked when the tips were marked that count for each run; runs with the same marks are repeats
         */
        static RunToRun of(List<TieRun> runs, List<Instant> marked) {
            double squares = 0;
            int freedom = 0;
            boolean phase = runs.stream().allMatch(r -> r.phaseDegrees().isPresent());
            for (Instant at : marked.stream().distinct().toList()) {
                List<Phasor> alike = new ArrayList<>();
                for (int r = 0; r < runs.size(); r++) {
                    // A line near the noise scatters by the noise, which its own error holds already.
                    boolean clear =
                            runs.get(r).standardError() < USUAL * runs.get(r).amplitude();
                    if (clear && marked.get(r).equals(at)) {
                        double angle = phase ? runs.get(r).phaseDegrees().orElseThrow() : 0;
                        alike.add(Phasor.ofDegrees(runs.get(r).amplitude(), angle));
                    }
                }
                Phasor mean = alike.stream().reduce(Phasor.ZERO, Phasor::plus).times(1.0 / Math.max(1, alike.size()));
                double size = Math.max(Double.MIN_NORMAL, mean.magnitude());
                for (Phasor one : alike) {
                    squares += Math.pow(one.minus(mean).magnitude() / size, 2);
                }
                freedom += Math.max(0, alike.size() - 1) * (phase ? 2 : 1);
            }
            return new RunToRun(Math.sqrt((USUAL_WORTH * USUAL * USUAL + squares) / (USUAL_WORTH + freedom)));
        }

        /** The runs with this scatter in their errors. */
        List<TieRun> within(List<TieRun> runs) {
            return runs.stream()
                    .map(r -> r.withError(
                            Math.max(Double.MIN_NORMAL, Math.hypot(r.standardError(), share * r.amplitude()))))
                    .toList();
        }
    }
}
