package evenblade.face.app;

import evenblade.base.problem.BadInput;
import evenblade.base.units.Length;
import evenblade.judge.tracking.CoupleEstimate;
import evenblade.judge.tracking.FaceRunOut;
import evenblade.judge.tracking.LimitCheck;
import evenblade.judge.tracking.PitchReadings;
import evenblade.judge.tracking.RunOutTest;
import evenblade.judge.tracking.SessionSegments;
import evenblade.judge.tracking.StaticSide;
import evenblade.judge.tracking.StaticSide.BladeAngles;
import evenblade.judge.tracking.StaticSide.DialReading;
import evenblade.judge.tracking.StaticSide.MarkedTips;
import evenblade.judge.tracking.SwapFit;
import evenblade.judge.tracking.ThrustOffsetEstimate;
import evenblade.judge.tracking.TrackLimits;
import evenblade.judge.tracking.TrackingAnalysis;
import evenblade.judge.tracking.TrackingSession;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.JobRecord;
import evenblade.keep.job.Kind;
import evenblade.machine.installation.Installation;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Answers what the tip marks of a job say together, with pitch and run-out beside them. */
public final class JudgeTracking {
    private JudgeTracking() {}

    /**
     * Judges a job's tip marks.
     *
     * @throws BadInput where there is no job or it has no tip marks that count
     */
    public static StaticSide judge(Path job) {
        JobRecord record = JobFolder.open(job).record();
        if (sessions(record).isEmpty()) {
            throw BadInput.in(job).found("no tip marks in this job", "at least one entry made with 'job tracking'");
        }
        return of(record);
    }

    /**
     * Tip marks just written down, held against the limits.
     *
     * @param event id of their entry
     */
    public static MarkedTips marked(Path job, String event) {
        return sessions(JobFolder.open(job).record()).stream()
                .filter(tips -> tips.event().equals(event))
                .findFirst()
                .orElseThrow(() -> BadInput.in(job).found("no tip marks " + event, "an entry of tip marks"));
    }

    /** Judges a record, with or without tip marks. */
    static StaticSide of(JobRecord record) {
        Installation installation = record.installation();
        List<MarkedTips> sessions = sessions(record);
        List<List<TrackingSession>> spells = sessions.isEmpty()
                ? List.of()
                : SessionSegments.part(
                        sessions.stream().map(MarkedTips::session).toList(), changes(record));
        List<TrackingSession> last = spells.isEmpty() ? List.of() : spells.get(spells.size() - 1);
        List<DialReading> runOuts = runOuts(record);
        List<BladeAngles> pitches = pitches(record);
        return new StaticSide(
                record.name(),
                record.invented(),
                installation,
                sessions,
                spells.stream()
                        .map(spell -> TrackingAnalysis.of(spell, new TrackLimits(installation.limits())))
                        .toList(),
                runOuts,
                runOuts.isEmpty() || last.isEmpty()
                        ? Optional.empty()
                        : test(runOuts.get(runOuts.size() - 1).reading(), installation, last),
                pitches,
                last.isEmpty() ? Optional.empty() : couple(installation, last.get(last.size() - 1)),
                pitches.isEmpty()
                        ? Optional.empty()
                        : thrust(installation, pitches.get(pitches.size() - 1).readings()));
    }

    /** When something was changed that may have moved the tips, by the order of the record. */
    static List<Instant> changes(JobRecord record) {
        Map<String, Instant> moments = record.moments();
        return record.standing().stream()
                .filter(Event::changesTrack)
                .map(e -> moments.get(e.id()))
                .toList();
    }

    static List<MarkedTips> sessions(JobRecord record) {
        Map<String, Instant> moments = record.moments();
        List<MarkedTips> sessions = new ArrayList<>();
        for (Event event : record.standing(Kind.TRACKING)) {
            TrackingSession session = ((Detail.Tracking) event.detail()).session(moments.get(event.id()));
            sessions.add(new MarkedTips(
                    event.id(),
                    event.at().toInstant(),
                    session,
                    LimitCheck.track(record.installation().limits(), session.marksMm())));
        }
        return sessions;
    }

    static List<DialReading> runOuts(JobRecord record) {
        Map<String, Instant> moments = record.moments();
        List<DialReading> readings = new ArrayList<>();
        for (Event event : record.standing(Kind.RUN_OUT)) {
            FaceRunOut reading = ((Detail.RunOut) event.detail()).reading(moments.get(event.id()));
            readings.add(new DialReading(
                    event.id(),
                    event.at().toInstant(),
                    reading,
                    tipRadius(record.installation()).map(reading::atTip),
                    LimitCheck.runOut(record.installation().limits(), reading)));
        }
        return readings;
    }

    static List<BladeAngles> pitches(JobRecord record) {
        Map<String, Instant> moments = record.moments();
        List<BladeAngles> pitches = new ArrayList<>();
        for (Event event : record.standing(Kind.PITCH)) {
            PitchReadings readings = ((Detail.Pitch) event.detail()).angles(moments.get(event.id()));
            pitches.add(new BladeAngles(
                    event.id(),
                    event.at().toInstant(),
                    readings,
                    LimitCheck.pitch(record.installation().pitchLimits(), readings.bladeAnglesDeg())));
        }
        return pitches;
    }

    static Optional<Length> tipRadius(Installation installation) {
        return installation.propeller().diameter().map(d -> Length.ofMetres(d.metres() / 2));
    }

    static Optional<RunOutTest> test(FaceRunOut runOut, Installation installation, List<TrackingSession> sessions) {
        return tipRadius(installation)
                .flatMap(radius ->
                        runOut.predictedMarksMm(installation.propeller().blades(), radius))
                .flatMap(marks -> RunOutTest.of(SwapFit.of(sessions), marks));
    }

    private static Optional<CoupleEstimate> couple(Installation installation, TrackingSession session) {
        Installation.Propeller propeller = installation.propeller();
        OptionalDouble fastest = highestPropellerRpm(installation);
        if (propeller.bladeMass().isEmpty()
                || propeller.centreOfGravity().isEmpty()
                || tipRadius(installation).isEmpty()
                || fastest.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(CoupleEstimate.of(
                propeller.bladeMass().get(),
                propeller.centreOfGravity().get(),
                tipRadius(installation).get(),
                fastest.getAsDouble(),
                session.marksMm()));
    }

    private static Optional<ThrustOffsetEstimate> thrust(Installation installation, PitchReadings readings) {
        Optional<Length> chord = installation.propeller().chord();
        OptionalDouble fastest = highestPropellerRpm(installation);
        return chord.isEmpty() || tipRadius(installation).isEmpty() || fastest.isEmpty()
                ? Optional.empty()
                : Optional.of(ThrustOffsetEstimate.of(
                        readings.bladeAnglesDeg(),
                        chord.get(),
                        tipRadius(installation).get(),
                        fastest.getAsDouble()));
    }

    private static OptionalDouble highestPropellerRpm(Installation installation) {
        OptionalDouble engine = installation.engine().maxRpm();
        return engine.isPresent()
                ? OptionalDouble.of(
                        engine.getAsDouble() / installation.reduction().ratio())
                : engine;
    }
}
