package evenblade.app;

import evenblade.findings.RunEvidence;
import evenblade.installation.Shaft;
import evenblade.job.JobRecord;
import evenblade.numeric.Phasor;
import evenblade.orders.DwellOrders;
import evenblade.orders.Level;
import evenblade.tie.HubCounting;
import evenblade.tie.TieAnswer;
import evenblade.tie.TieRun;
import evenblade.tie.VibrationAndTrack;
import evenblade.tracking.HubPattern;
import evenblade.tracking.Layout;
import evenblade.tracking.PitchReadings;
import evenblade.tracking.TrackingSession;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;

/**
 * Ties propeller 1× of a job's runs to the track that was marked before each.
 *
 * <p>One speed and one channel are used: the dwell of the first run nearest its mean speed, and of the channels the one
 * with most 1× there. Runs without a dwell within 2 % of that speed, without that channel, or before the first marks
 * are left out. Hub positions are taken as counted with the rotation.
 */
final class TieOfJob {
    private static final double SAME_SPEED = 0.02;
    /** Scatter from run to run that is added to a run's own error, as a share: wind, throttle, sensor fixing. */
    private static final double RUN_TO_RUN = 0.03;

    /** A blade differs where its angle lies this many standard errors off the mean. */
    private static final double ERRORS_THAT_COUNT = 4;

    private TieOfJob() {}

    /** The tie; empty where no run has marks before it. */
    static Optional<TieAnswer> of(JobRecord record, List<RunEvidence> runs) {
        List<TrackingSession> sessions = JudgeTracking.sessions(record).stream()
                .map(JudgeTracking.MarkedTips::session)
                .toList();
        List<PitchReadings> read = JudgeTracking.pitches(record).stream()
                .map(JudgeTracking.BladeAngles::readings)
                .toList();
        // Angles alike within the reading error would only blur what goes with track.
        List<PitchReadings> angles = read.stream().anyMatch(TieOfJob::differ) ? read : List.of();
        Optional<Choice> choice =
                runs.stream().flatMap(run -> Choice.of(run).stream()).findFirst();
        if (choice.isEmpty()) {
            return Optional.empty();
        }
        List<TieRun> tied = new ArrayList<>();
        for (RunEvidence run : runs) {
            Optional<TrackingSession> marks =
                    sessions.stream().filter(s -> !s.at().isAfter(run.at())).reduce((first, second) -> second);
            Optional<Level.Measured> once = choice.get().once(run);
            if (marks.isPresent() && once.isPresent()) {
                tied.add(tieRun(
                        run,
                        once.get(),
                        marks.get(),
                        pitch(angles, run, marks.get().layout())));
            }
        }
        return tied.isEmpty() ? Optional.empty() : Optional.of(VibrationAndTrack.of(tied, HubCounting.WITH_ROTATION));
    }

    private static boolean differ(PitchReadings readings) {
        SortedMap<String, Double> errors = readings.standardErrorsDeg();
        return readings.deviationsDeg().entrySet().stream()
                .anyMatch(e -> Math.abs(e.getValue()) > ERRORS_THAT_COUNT * errors.get(e.getKey()));
    }

    private static TieRun tieRun(
            RunEvidence run, Level.Measured once, TrackingSession marks, Optional<Phasor> pitchDeg) {
        double error = Math.hypot(
                Double.isFinite(once.standardError()) ? once.standardError() : once.amplitude(),
                RUN_TO_RUN * once.amplitude());
        return new TieRun(
                run.name(),
                once.amplitude(),
                Math.max(error, Double.MIN_NORMAL),
                once.phaseDeg(),
                HubPattern.of(marks.marksMm()).first(),
                pitchDeg);
    }

    /** Blade angles read last before the run, carried along with the blades to where they sat. */
    private static Optional<Phasor> pitch(List<PitchReadings> angles, RunEvidence run, Layout layout) {
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
     */
    private record Choice(double propellerHz, String channel) {
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
                    .map(d -> new Choice(
                            d.dwell().propellerHz(),
                            run.numbers().channels().stream()
                                    .max(Comparator.comparingDouble(
                                            c -> once(c.dwells().get(dwells.indexOf(d)))
                                                    .map(Level.Measured::amplitude)
                                                    .orElse(0.0)))
                                    .orElseThrow()
                                    .channel()));
        }

        Optional<Level.Measured> once(RunEvidence run) {
            if (!run.numbers().confirmed()) {
                return Optional.empty();
            }
            return run.numbers().channels().stream()
                    .filter(c -> c.channel().equals(channel))
                    .flatMap(c -> c.dwells().stream())
                    .filter(d -> Math.abs(d.dwell().propellerHz() / propellerHz - 1) < SAME_SPEED)
                    .findFirst()
                    .flatMap(Choice::once);
        }

        private static Optional<Level.Measured> once(DwellOrders dwell) {
            return dwell.readings().stream()
                    .filter(r -> r.line().of() == Shaft.PROPELLER && r.line().order() == 1)
                    .filter(r -> r.inseparableFrom().isEmpty() && r.detected())
                    .map(r -> (Level.Measured) r.level())
                    .findFirst();
        }
    }
}
