package evenblade.face.app;

import evenblade.base.fact.Warning;
import evenblade.judge.balance.BalanceAnswer;
import evenblade.judge.balance.BalanceAnswer.Advice;
import evenblade.judge.balance.BalanceRequest;
import evenblade.judge.balance.BalanceRequest.HubPlace;
import evenblade.judge.balance.Balancing;
import evenblade.judge.balance.JobBalance;
import evenblade.judge.balance.Objection;
import evenblade.judge.balance.Objection.Property;
import evenblade.judge.balance.Residual;
import evenblade.judge.balance.RunsTogether;
import evenblade.judge.balance.Split;
import evenblade.judge.balance.Unbalance;
import evenblade.judge.balance.Weight;
import evenblade.judge.balance.WeightedReading;
import evenblade.judge.tracking.LimitCheck;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.JobRecord;
import evenblade.keep.job.WeightsOn;
import evenblade.machine.installation.HubCounting;
import evenblade.machine.installation.HubWeights;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The correction that a job's runs with and without weights call for. */
public final class BalanceJob {
    private BalanceJob() {}

    /**
     * Reads the runs and answers.
     *
     * @param engineRpm the speed to balance at; where empty, the highest that most runs have in common
     * @param channel by name or number; the one to look at first where empty
     * @throws evenblade.base.problem.BadInput where there is no job, or it has no such channel
     */
    public static JobBalance balance(Path job, OptionalDouble engineRpm, Optional<String> channel) {
        return balance(new JobRuns(JobFolder.open(job)), engineRpm, channel);
    }

    static JobBalance balance(JobRuns runs, OptionalDouble engineRpm, Optional<String> channel) {
        JobRecord record = runs.record();
        Optional<HubCounting> counted = WeightsOn.counted(record);
        List<Warning> warnings = new ArrayList<>();
        BalanceSeries series = BalanceSeries.read(runs, engineRpm, channel, warnings);
        BalanceRequest request = request(record, series.runs(), counted);
        BalanceAnswer answer = Balancing.balance(request);
        List<Weight> on = BalanceSeries.weights(WeightsOn.now(record), counted);
        Unbalance sum = on.stream().map(Weight::unbalance).reduce(Unbalance.of(0, 0, 0), Unbalance::plus);
        Optional<Unbalance> addNow =
                answer.advice().map(advice -> advice.correction().value().minus(sum));
        return new JobBalance(
                record.name(),
                record.invented(),
                record.installation(),
                counted,
                series.channel(),
                series.engineRpm(),
                series.runs(),
                request,
                answer,
                on,
                addNow,
                addNow.filter(add -> !request.places().isEmpty()).flatMap(add -> Split.exact(add, request.places())),
                checks(record, series.runs(), counted),
                warnings);
    }

    private static BalanceRequest request(JobRecord record, List<JobBalance.Run> runs, Optional<HubCounting> counted) {
        HubWeights hub = record.installation().hubWeights();
        List<WeightedReading> readings =
                runs.stream().flatMap(run -> run.reading().stream()).toList();
        boolean phases = readings.stream().anyMatch(r -> r.phaseDeg().isPresent());
        RunsTogether together = new RunsTogether(
                runs.stream().map(JobBalance.Run::conditions).toList(),
                beyond(record),
                // Amplitudes alone read the same whichever way all angles are counted.
                counted.isPresent() || !phases);
        return new BalanceRequest(
                readings,
                together,
                hub.places().stream()
                        .map(place -> new HubPlace(
                                place.name(),
                                BalanceSeries.againstRotation(place.angle().degrees(), counted),
                                place.radius().millimetres()))
                        .toList(),
                hub.largest().map(mass -> OptionalDouble.of(mass.grams())).orElse(OptionalDouble.empty()),
                hub.stock().stream().map(mass -> mass.grams()).toList());
    }

    /** The last runs with weights that no run before them had, each held against what the runs before them say. */
    private static List<JobBalance.CheckRun> checks(
            JobRecord record, List<JobBalance.Run> runs, Optional<HubCounting> counted) {
        List<JobBalance.Run> read =
                runs.stream().filter(run -> run.reading().isPresent()).toList();
        if (read.isEmpty()) {
            return List.of();
        }
        List<Weight> last = weights(read.get(read.size() - 1));
        int from = read.size() - 1;
        while (from > 0 && weights(read.get(from - 1)).equals(last)) {
            from--;
        }
        List<JobBalance.Run> before = read.subList(0, from);
        if (last.isEmpty() || before.stream().anyMatch(run -> weights(run).equals(last))) {
            return List.of();
        }
        BalanceAnswer earlier = Balancing.balance(request(record, before, counted));
        if (earlier.advice().isEmpty()) {
            return List.of();
        }
        Advice advice = earlier.advice().get();
        Residual predicted = Residual.of(advice.influence(), last);
        boolean phases = earlier.method() == BalanceAnswer.Method.WITH_PHASE;
        return read.subList(from, read.size()).stream()
                .map(run -> new JobBalance.CheckRun(
                        run, predicted, predicted.check(run.reading().orElseThrow(), phases)))
                .toList();
    }

    private static List<Weight> weights(JobBalance.Run run) {
        return run.reading().orElseThrow().weights();
    }

    /**
     * The correction that a file of typed readings calls for.
     *
     * @throws evenblade.base.problem.BadInput with the line, where something in the file can't be used
     */
    public static BalanceAnswer ofReadings(Path file) {
        return Balancing.balance(BalanceReadings.read(file));
    }

    /** Track, pitch and run-out as read last, where past a limit. */
    private static List<Objection> beyond(JobRecord record) {
        List<Objection> all = new ArrayList<>();
        last(JudgeTracking.sessions(record)).forEach(s -> add(all, Property.TRACK, s.checks()));
        last(JudgeTracking.pitches(record)).forEach(p -> add(all, Property.PITCH, p.checks()));
        last(JudgeTracking.runOuts(record)).forEach(r -> add(all, Property.RUN_OUT, r.checks()));
        return all;
    }

    private static <T> List<T> last(List<T> readings) {
        return readings.isEmpty() ? List.of() : List.of(readings.get(readings.size() - 1));
    }

    private static void add(List<Objection> all, Property property, List<LimitCheck> checks) {
        // Lengths are read in mm and told in m; angles stay in degrees.
        double scale = property == Property.PITCH ? 1 : 1e-3;
        checks.stream()
                .filter(LimitCheck::beyond)
                .forEach(check -> all.add(Objection.beyondLimit(
                        property, scale * check.measured().orElseThrow(), scale * check.allowed())));
    }
}
