package evenblade.face.app;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.json.JsonWriter;
import evenblade.base.problem.BadInput;
import evenblade.base.units.FullScale;
import evenblade.face.app.AnalysisWarnings.AnalysisFact;
import evenblade.judge.comparison.MeasuredRun;
import evenblade.judge.comparison.RunConditions;
import evenblade.judge.comparison.TrendStage;
import evenblade.keep.job.Conditions;
import evenblade.keep.job.Conditions.Condition;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.EvidenceCheck;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.JobRecord;
import evenblade.keep.job.Kind;
import evenblade.keep.job.RunSettings;
import evenblade.machine.installation.InstallationFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * The measured runs of a job: from its cache where the same recording was analysed in the same way before,
 * else from the raw file.
 */
final class JobRuns {
    private static final Set<WarningCode> OF_RECORDINGS =
            Set.of(WarningCode.RECORDING_MISSING, WarningCode.RECORDING_CHANGED, WarningCode.RECORDING_UNREADABLE);

    private final JobFolder folder;
    private final JobRecord record;
    private final Map<String, MeasuredRun> measured = new HashMap<>();
    private final Map<String, Result> results = new ConcurrentHashMap<>();
    private final List<Warning> warnings = new ArrayList<>();

    JobRuns(JobFolder folder) {
        this.folder = folder;
        this.record = folder.record();
    }

    /**
     * Runs between which nothing was changed.
     *
     * @param changes what was changed before the first of them
     * @param runs in order of time
     */
    record Repeats(List<Event> changes, List<Event> runs) {
        /** These runs for a trend, as far as each can be measured. */
        TrendStage stage(Function<Event, Optional<MeasuredRun>> measured) {
            return new TrendStage(
                    changes.stream().map(Event::text).toList(),
                    runs.stream().flatMap(run -> measured.apply(run).stream()).toList());
        }
    }

    JobRecord record() {
        return record;
    }

    /** What had to be said while measuring, and which recordings aren't what they were. */
    List<Warning> warnings() {
        Stream<Warning> evidence =
                folder.check(EvidenceCheck.Thoroughness.QUICK).stream().filter(w -> OF_RECORDINGS.contains(w.code()));
        return Stream.concat(warnings.stream(), evidence).distinct().toList();
    }

    /** All standing runs, parted by corrections and balance weights. */
    List<Repeats> repeats() {
        List<Repeats> all = new ArrayList<>();
        List<Event> changes = new ArrayList<>();
        List<Event> runs = new ArrayList<>();
        for (Event event : record.standing()) {
            if (event.changesMachine()) {
                if (!runs.isEmpty()) {
                    all.add(new Repeats(List.copyOf(changes), List.copyOf(runs)));
                    changes.clear();
                    runs.clear();
                }
                changes.add(event);
            } else if (event.kind() == Kind.RUN) {
                runs.add(event);
            }
        }
        if (!runs.isEmpty()) {
            all.add(new Repeats(List.copyOf(changes), List.copyOf(runs)));
        }
        return all;
    }

    /** What a run is called: its label, where no other run has it, else its id too. */
    String nameOf(Event run) {
        if (run.label().isEmpty()) {
            return run.id();
        }
        String label = run.label().get();
        long same = record.standing(Kind.RUN).stream()
                .filter(e -> e.label().equals(run.label()))
                .count();
        return same == 1 ? label : label + " (" + run.id() + ")";
    }

    /** The measured run; empty, with a warning that names it, where its recording can't be used. */
    Optional<MeasuredRun> tryMeasured(Event run) {
        try {
            return Optional.of(measured(run));
        } catch (BadInput e) {
            warnings.add(Warning.of(
                    WarningCode.RUN_LEFT_OUT,
                    new Subject.Entry(run.id()),
                    Fact.of(AnalysisFact.RUN_WITH_ID, new Quoted(nameOf(run)), new Quoted(run.id())),
                    new Quoted(e.getMessage())));
            return Optional.empty();
        }
    }

    /**
     * The measured run.
     *
     * @throws BadInput where its recording is missing or can't be used
     */
    MeasuredRun measured(Event run) {
        MeasuredRun known = measured.get(run.id());
        if (known == null) {
            known = find(run);
            measured.put(run.id(), known);
        }
        return known;
    }

    private MeasuredRun find(Event run) {
        Result result = result(run, false);
        if (!result.asAdded()) {
            warnings.add(Warning.of(
                    WarningCode.RECORDING_CHANGED,
                    new Subject.Entry(run.id()),
                    Fact.of(AnalysisFact.RECORDING_TAKEN_AS_IT_IS, new Quoted(nameOf(run)), new Quoted(run.id()))));
        }
        return measured(run, result.run());
    }

    /** The amplitudes of an analysed run with its name and conditions. */
    MeasuredRun measured(Event run, AnalysedRun analysed) {
        return MeasuredRun.of(nameOf(run), conditions((Detail.Run) run.detail()), analysed.orders());
    }

    /**
     * What analysing a run's recording came to.
     *
     * @param run the analysed run
     * @param asAdded whether the recording is still the one that was added
     */
    record Result(AnalysedRun run, boolean asAdded) {}

    /**
     * A run from the cache, else from its raw file, and then kept. Several threads may ask at once.
     *
     * @param turning whether one turn of the propeller is wanted too
     * @throws BadInput where its recording is missing or can't be used
     */
    Result result(Event asked, boolean turning) {
        Event run = record.asItReads(asked);
        Result known = results.get(run.id());
        if (known == null || turning && !known.run().turning()) {
            known = kept(run, turning).map(kept -> new Result(kept, true)).orElseGet(() -> fresh(run, turning));
            results.put(run.id(), known);
        }
        return known;
    }

    private Optional<AnalysedRun> kept(Event run, boolean turning) {
        Detail.Run detail = (Detail.Run) run.detail();
        return folder.cache()
                .get(dependsOn(detail))
                .flatMap(bytes -> KeptRun.read(bytes, folder.locate(detail.file()), record.installation()))
                .filter(kept -> kept.turning() || !turning)
                // A recording with a flipped bit has its size and time still. One that is gone is told elsewhere.
                .filter(kept -> !Files.exists(folder.locate(detail.file())) || folder.unchanged(detail.file()));
    }

    private Result fresh(Event run, boolean turning) {
        return keep(run, AnalyseRecording.analyse(request((Detail.Run) run.detail())), turning);
    }

    /** Keeps what was analysed of a run's recording, where that is the one that was added. */
    Result keep(Event run, AnalysedRecording analysed, boolean turning) {
        Detail.Run detail = (Detail.Run) run.detail();
        AnalysedRun fresh = AnalysedRun.of(analysed, turning).at(folder.locate(detail.file()));
        boolean asAdded = fresh.orders()
                .source()
                .sha256()
                .hex()
                .equals(detail.file().stamp().sha256());
        if (asAdded) {
            folder.cache().put(dependsOn(detail), KeptRun.written(fresh));
        }
        return new Result(fresh, asAdded);
    }

    /** How its recording is to be analysed. */
    AnalysisRequest request(Detail.Run run) {
        return request(
                folder.locate(run.file()),
                run.settings(),
                run.conditions(),
                run.arrivals().map(folder::locate));
    }

    /** What to analyse of a file that needn't be in the job yet. */
    AnalysisRequest request(Path file, RunSettings settings, Conditions noted, Optional<Path> arrivals) {
        settings.requireUsable();
        return new AnalysisRequest(
                file,
                record.installation(),
                settings.engineRpm(),
                settings.propellerRpm(),
                settings.tolerancePercent().orElse(AnalysisRequest.DEFAULT_TOLERANCE_PERCENT),
                settings.channels(),
                settings.markChannel(),
                fullScale(settings),
                settings.table(),
                arrivals,
                noted.get(Condition.DIRECTION).map(FeltChannels::parts).orElse(List.of()));
    }

    private static Optional<FullScale> fullScale(RunSettings settings) {
        return settings.fullScale().map(text -> FullScale.parse(text, BadInput.in("full scale")));
    }

    /** Everything that an analysed run depends on. */
    private String dependsOn(Detail.Run run) {
        return dependsOn("analysed run", KeptRun.SHAPE, run);
    }

    /** What any other result of the recording depends on. */
    String dependsOn(String result, String shape, Detail.Run run) {
        String version = JobRuns.class.getPackage().getImplementationVersion();
        return String.join(
                "\n",
                result,
                shape,
                String.valueOf(version),
                run.file().stamp().sha256(),
                run.settings().toString(),
                run.conditions().get(Condition.DIRECTION).orElse(""),
                JsonWriter.write(InstallationFile.written(record.installation())));
    }

    /** What comparing has to know of how it was measured. */
    static RunConditions conditions(Detail.Run run) {
        Conditions noted = run.conditions();
        return new RunConditions(
                noted.get(Condition.SENSOR),
                noted.get(Condition.PLACE),
                noted.get(Condition.DIRECTION),
                noted.get(Condition.GAIN),
                noted.get(Condition.DEVICE),
                fullScale(run.settings()),
                noted.get(Condition.WIND),
                noted.get(Condition.TEMPERATURE),
                noted.get(Condition.FUEL),
                noted.get(Condition.NOTHING_CHANGED).isPresent());
    }
}
