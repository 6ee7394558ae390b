package evenblade.face.app;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import evenblade.face.app.AnalysisWarnings.AnalysisFact;
import evenblade.judge.findings.JobEvidence;
import evenblade.judge.findings.RunEvidence;
import evenblade.judge.findings.RunEvidence.Direction;
import evenblade.judge.findings.RunEvidence.RunRef;
import evenblade.judge.findings.RunNumbers;
import evenblade.judge.findings.StaticEvidence;
import evenblade.judge.tie.JobTie;
import evenblade.judge.tracking.LimitCheck;
import evenblade.judge.tracking.SessionSegments;
import evenblade.judge.tracking.StaticSide;
import evenblade.judge.tracking.TrackLimits;
import evenblade.judge.tracking.TrackingAnalysis;
import evenblade.judge.tracking.TrackingSession;
import evenblade.keep.job.Conditions.Condition;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobRecord;
import evenblade.keep.job.Kind;
import evenblade.machine.installation.Installation;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/** Everything that a job has measured, loaded for weighing. */
final class EvidenceOfJob {
    private final JobRecord record;
    private final JobRuns runs;
    private final List<Warning> warnings = new ArrayList<>();

    private EvidenceOfJob(JobRuns runs) {
        this.runs = runs;
        this.record = runs.record();
    }

    /**
     * What was loaded.
     *
     * @param record the job
     * @param evidence its numbers
     * @param tie 1× against track over the runs; empty where no run has marks before it
     * @param warnings runs that had to be left out
     */
    record Loaded(JobRecord record, JobEvidence evidence, Optional<JobTie> tie, List<Warning> warnings) {
        /** Runs that say nothing of the machine, each with why: those left out, and those whose speed isn't borne out. */
        List<Warning> silent() {
            List<Warning> silent = new ArrayList<>(warnings);
            for (RunEvidence run : evidence.runs()) {
                run.numbers()
                        .speedDoubt()
                        .ifPresent(doubt ->
                                silent.add(without(run.ref().id(), run.ref().name(), doubt)));
            }
            return silent;
        }
    }

    private static Warning without(String id, String name, Value why) {
        return Warning.of(
                WarningCode.RUN_LEFT_OUT, new Subject.Entry(id), Fact.of(AnalysisFact.RUN, new Quoted(name)), why);
    }

    /** Loads a job, analysing the runs that aren't in its cache, two or more at a time. */
    static Loaded of(JobRuns runs, Progress progress) {
        progress.at(0, "analysing the runs");
        EvidenceOfJob loader = new EvidenceOfJob(runs);
        List<RunEvidence> measured = loader.runs();
        progress.at(1, "done");
        StaticEvidence still = loader.still();
        Optional<JobTie> tie = TieOfJob.of(loader.record, measured, still.track());
        return new Loaded(
                loader.record,
                new JobEvidence(loader.record.installation(), measured, still, tie.map(JobTie::answer)),
                tie,
                List.copyOf(loader.warnings));
    }

    /** Either a run's numbers or why there are none. */
    private record Outcome(Optional<RunNumbers> numbers, Optional<Value> trouble) {}

    private List<RunEvidence> runs() {
        List<Event> events = record.standing(Kind.RUN);
        List<Outcome> outcomes = IntStream.range(0, events.size())
                .parallel()
                .mapToObj(i -> outcome(events.get(i)))
                .toList();
        Map<String, Instant> moments = record.moments();
        List<RunEvidence> measured = new ArrayList<>();
        List<String> changes = new ArrayList<>();
        Optional<Instant> lastChange = Optional.empty();
        int next = 0;
        for (Event event : record.standing()) {
            if (event.changesMachine()) {
                changes.add(event.text());
                lastChange = Optional.of(moments.get(event.id()));
            } else if (event.kind() == Kind.RUN) {
                Outcome outcome = outcomes.get(next);
                next++;
                if (outcome.numbers().isPresent()) {
                    measured.add(evidence(
                            event,
                            moments.get(event.id()),
                            lastChange,
                            changes,
                            outcome.numbers().get()));
                    changes.clear();
                } else {
                    warnings.add(without(
                            event.id(), runs.nameOf(event), outcome.trouble().orElseThrow()));
                }
            }
        }
        return measured;
    }

    private Outcome outcome(Event run) {
        try {
            JobRuns.Result result = runs.result(run, false);
            return result.asAdded()
                    ? new Outcome(Optional.of(RunNumbers.of(result.run().orders())), Optional.empty())
                    : new Outcome(Optional.empty(), Optional.of(Fact.of(AnalysisFact.RECORDING_CHANGED)));
        } catch (BadInput e) {
            return new Outcome(Optional.empty(), Optional.of(new Quoted(e.getMessage())));
        }
    }

    private RunEvidence evidence(
            Event event, Instant moment, Optional<Instant> lastChange, List<String> changes, RunNumbers measured) {
        Detail.Run run = (Detail.Run) event.detail();
        return new RunEvidence(
                new RunRef(event.id(), runs.nameOf(event)),
                moment,
                lastChange,
                changes,
                measured,
                directions(measured.fileChannels(), run.conditions().get(Condition.DIRECTION)),
                JobRuns.conditions(run).microphone());
    }

    private StaticEvidence still() {
        return new StaticEvidence(
                track(),
                JudgeTracking.pitches(record).stream()
                        .map(p -> new StaticEvidence.Pitch(p.readings(), p.checks()))
                        .toList(),
                JudgeTracking.runOuts(record).stream()
                        .map(r -> new StaticEvidence.RunOut(r.reading(), r.atTip(), r.checks()))
                        .toList());
    }

    private List<StaticEvidence.Track> track() {
        List<TrackingSession> sessions = JudgeTracking.sessions(record).stream()
                .map(StaticSide.MarkedTips::session)
                .toList();
        if (sessions.isEmpty()) {
            return List.of();
        }
        return SessionSegments.part(sessions, JudgeTracking.changes(record)).stream()
                .map(this::track)
                .toList();
    }

    private StaticEvidence.Track track(List<TrackingSession> spell) {
        Installation installation = record.installation();
        TrackingSession last = spell.get(spell.size() - 1);
        // The dial that was read last before this spell ended belongs to it.
        Optional<StaticSide.DialReading> dial = JudgeTracking.runOuts(record).stream()
                .filter(r -> !r.reading().at().isAfter(last.at()))
                .reduce((first, second) -> second);
        return new StaticEvidence.Track(
                TrackingAnalysis.of(spell, new TrackLimits(installation.limits())),
                LimitCheck.track(installation.limits(), last.marksMm()),
                dial.flatMap(d -> JudgeTracking.test(d.reading(), installation, spell)));
    }

    /**
     * Reads the directions.
     *
     * @param fileChannels names of all channels of the file, in its order
     * @param noted what was noted as direction: one for all, or one per channel parted by commas
     * @return those that could be told
     */
    static Map<String, Direction> directions(List<String> fileChannels, Optional<String> noted) {
        Map<String, Direction> directions = new HashMap<>();
        fileChannels.forEach(name -> direction(name).ifPresent(d -> directions.put(name, d)));
        if (noted.isEmpty()) {
            return directions;
        }
        List<String> parts = FeltChannels.parts(noted.get());
        for (int i = 0; i < fileChannels.size(); i++) {
            if (parts.size() == 1 || i < parts.size()) {
                Optional<Direction> told = direction(parts.get(parts.size() == 1 ? 0 : i));
                String name = fileChannels.get(i);
                told.ifPresent(d -> directions.put(name, d));
            }
        }
        return directions;
    }

    /** The direction that a word names. */
    static Optional<Direction> direction(String words) {
        String text = words.toLowerCase(Locale.ROOT);
        if (text.matches(".*\\b(along|axial|fore|fore-aft|shaft)\\b.*")) {
            return Optional.of(Direction.ALONG);
        }
        if (text.matches(".*\\b(up|upright|vertical|down)\\b.*")) {
            return Optional.of(Direction.UP);
        }
        return text.matches(".*\\b(across|level|lateral|sideways|horizontal|radial)\\b.*")
                ? Optional.of(Direction.ACROSS)
                : Optional.empty();
    }
}
