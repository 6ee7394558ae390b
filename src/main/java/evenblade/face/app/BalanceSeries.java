package evenblade.face.app;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import evenblade.face.app.AnalysisWarnings.AnalysisFact;
import evenblade.judge.balance.JobBalance;
import evenblade.judge.balance.Objection.SensorAspect;
import evenblade.judge.balance.TrialConditions;
import evenblade.judge.balance.Weight;
import evenblade.judge.balance.WeightedReading;
import evenblade.judge.comparison.MeasuredRun;
import evenblade.keep.job.Conditions.Condition;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.Kind;
import evenblade.keep.job.WeightsOn;
import evenblade.machine.installation.HubCounting;
import evenblade.machine.installation.Reduction;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.RunOrders;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Propeller 1× of one channel at one speed, over the runs of a job that belong together: those since something else than
 * a weight was changed, or, where none of them was made without weights, those from the last run without weights on.
 *
 * @param channel that was read
 * @param engineRpm of the dwells that were read
 * @param runs in order of time
 */
record BalanceSeries(Optional<JobBalance.Read> channel, OptionalDouble engineRpm, List<JobBalance.Run> runs) {
    /** A run of the job with what was changed, apart from weights, since the run before it. */
    private record Stage(Event run, List<String> changes) {}

    /** A run and the channel of it that is read. */
    private record Measured(Stage stage, RunOrders orders, ChannelOrders channel) {}

    static BalanceSeries read(
            JobRuns runs, OptionalDouble engineRpm, Optional<String> channel, List<Warning> warnings) {
        List<Stage> stages = stages(runs);
        Map<Stage, RunOrders> orders = new LinkedHashMap<>();
        for (Stage stage : stages) {
            orders(runs, stage.run(), warnings).ifPresent(known -> orders.put(stage, known));
        }
        Optional<String> name = orders.values().stream().findFirst().map(first -> channel(first, channel));
        List<Measured> measured = new ArrayList<>();
        orders.forEach((stage, known) -> known.channels().stream()
                .filter(c -> c.channel().equals(name.orElseThrow()))
                .findFirst()
                .ifPresent(c -> measured.add(new Measured(stage, known, c))));
        OptionalDouble speed = engineRpm.isPresent() ? engineRpm : sharedRpm(measured);
        Optional<JobBalance.Read> read = measured.stream()
                .findFirst()
                .map(m -> new JobBalance.Read(m.channel().channel(), m.channel().unit()));
        return new BalanceSeries(
                read,
                speed,
                measured.stream().map(m -> run(runs, measured.get(0), m, speed)).toList());
    }

    private static List<Stage> stages(JobRuns runs) {
        List<Stage> all = new ArrayList<>();
        List<String> changes = new ArrayList<>();
        int since = 0;
        for (Event event : runs.record().standing()) {
            if (event.changesTrack()) {
                changes.add(event.text());
                since = all.size();
            } else if (event.kind() == Kind.RUN) {
                all.add(new Stage(event, List.copyOf(changes)));
                changes.clear();
            }
        }
        if (all.subList(since, all.size()).stream().noneMatch(s -> bare(runs, s)) && changes.isEmpty()) {
            int from = all.size() - 1;
            while (from > 0 && !bare(runs, all.get(from))) {
                from--;
            }
            since = Math.max(0, from);
        }
        List<Stage> kept = new ArrayList<>(all.subList(since, all.size()));
        if (!kept.isEmpty()) {
            kept.set(0, new Stage(kept.get(0).run(), List.of()));
        }
        return kept;
    }

    private static boolean bare(JobRuns runs, Stage stage) {
        return WeightsOn.during(runs.record(), stage.run()).isEmpty();
    }

    private static Optional<RunOrders> orders(JobRuns runs, Event run, List<Warning> warnings) {
        try {
            JobRuns.Result result = runs.result(run, false);
            if (result.asAdded()) {
                return Optional.of(result.run().orders());
            }
            warnings.add(leftOut(runs, run, Fact.of(AnalysisFact.RECORDING_CHANGED)));
        } catch (BadInput e) {
            warnings.add(leftOut(runs, run, new Quoted(e.getMessage())));
        }
        return Optional.empty();
    }

    private static Warning leftOut(JobRuns runs, Event run, Value why) {
        return Warning.of(
                WarningCode.RUN_LEFT_OUT,
                new Subject.Entry(run.id()),
                Fact.of(AnalysisFact.RUN, new Quoted(runs.nameOf(run))),
                why);
    }

    private static String channel(RunOrders first, Optional<String> wanted) {
        List<String> names =
                first.channels().stream().map(ChannelOrders::channel).toList();
        if (wanted.isEmpty()) {
            return names.get(0);
        }
        List<String> file = first.source().channels();
        for (int i = 0; i < file.size(); i++) {
            boolean meant = wanted.get().equals(file.get(i)) || wanted.get().equals(String.valueOf(i + 1));
            if (meant && names.contains(file.get(i))) {
                return file.get(i);
            }
        }
        throw BadInput.in("channel '" + wanted.get() + "'")
                .found("no such channel in the first run", "one of " + String.join(", ", names));
    }

    /** The engine speed that most runs have a dwell at; of those the highest. */
    private static OptionalDouble sharedRpm(List<Measured> runs) {
        return runs.stream()
                .flatMap(run -> run.channel().dwells().stream().map(d -> rpm(run, d)))
                .max(Comparator.comparingLong((Double rpm) -> having(runs, rpm)).thenComparing(rpm -> rpm))
                .map(OptionalDouble::of)
                .orElse(OptionalDouble.empty());
    }

    private static long having(List<Measured> runs, double rpm) {
        return runs.stream()
                .filter(run -> run.channel().dwells().stream().anyMatch(d -> MeasuredRun.sameSpeed(rpm(run, d), rpm)))
                .count();
    }

    private static double rpm(Measured run, DwellOrders dwell) {
        return dwell.dwell().propellerRpm() * run.orders().ratio();
    }

    private static JobBalance.Run run(JobRuns runs, Measured first, Measured run, OptionalDouble engineRpm) {
        Event event = run.stage().run();
        List<Weight> weights = weights(WeightsOn.during(runs.record(), event), WeightsOn.counted(runs.record()));
        Optional<DwellOrders> dwell = run.channel().dwells().stream()
                .min(Comparator.comparingDouble(d -> Math.abs(rpm(run, d) - engineRpm.orElse(0))));
        Optional<WeightedReading> reading = dwell.flatMap(OnceLine::of)
                .map(line -> new WeightedReading(line.amplitude(), line.phaseDeg(), line.standardError(), weights));
        boolean direct = run.orders().installation().reduction().kind() == Reduction.Kind.DIRECT;
        TrialConditions conditions = new TrialConditions(
                run.orders().speed().doubt().isEmpty() && reading.isPresent(),
                dwell.map(d -> d.dwell().propellerRpm())
                        .orElse(engineRpm.orElse(0) / run.orders().ratio()),
                dwell.map(OnceLine::sharedCrankOrder).orElse(OptionalDouble.empty()),
                direct,
                run.stage().changes(),
                sensor((Detail.Run) first.stage().run().detail(), (Detail.Run) event.detail()),
                run.channel().dwells().stream()
                        .sorted(Comparator.comparingDouble(d -> d.dwell().propellerRpm()))
                        .flatMap(d -> OnceLine.of(d).stream().map(line -> line.dwell(d)))
                        .toList(),
                dwell.map(OnceLine::halfOrderShare).orElse(OptionalDouble.empty()));
        return new JobBalance.Run(event.id(), runs.nameOf(event), reading, conditions);
    }

    /** What about the sensor was noted otherwise than in the first run; not noted in one of the two is no difference. */
    private static Set<SensorAspect> sensor(Detail.Run first, Detail.Run run) {
        Set<SensorAspect> changed = EnumSet.noneOf(SensorAspect.class);
        Map<Condition, SensorAspect> aspects = Map.of(
                Condition.PLACE, SensorAspect.PLACE,
                Condition.DIRECTION, SensorAspect.DIRECTION,
                Condition.GAIN, SensorAspect.GAIN);
        aspects.forEach((condition, aspect) -> {
            Optional<String> before = first.conditions().get(condition);
            Optional<String> now = run.conditions().get(condition);
            if (before.isPresent() && now.isPresent() && !before.get().equalsIgnoreCase(now.get())) {
                changed.add(aspect);
            }
        });
        if (!Objects.equals(first.settings().fullScale(), run.settings().fullScale())) {
            changed.add(SensorAspect.GAIN);
        }
        return changed;
    }

    /** Weights of a record as balancing takes them: grams, millimetres, degrees against the rotation. */
    static List<Weight> weights(List<Event> on, Optional<HubCounting> counted) {
        return on.stream()
                .flatMap(event -> WeightsOn.putOn(event).stream())
                .map(weight ->
                        Weight.of(weight.massG(), weight.radiusMm(), againstRotation(weight.angleDeg(), counted)))
                .toList();
    }

    static double againstRotation(double degrees, Optional<HubCounting> counted) {
        double turned = counted.filter(c -> c == HubCounting.WITH_ROTATION).isPresent() ? -degrees : degrees;
        return ((turned % 360) + 360) % 360;
    }
}
