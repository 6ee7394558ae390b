package evenblade.face.cli;

import evenblade.base.json.JsonFields;
import evenblade.judge.balance.BalanceAnswer;
import evenblade.judge.balance.BalanceAnswer.Advice;
import evenblade.judge.balance.BalanceAtRest;
import evenblade.judge.balance.Correction;
import evenblade.judge.balance.JobBalance;
import evenblade.judge.balance.Objection;
import evenblade.judge.balance.Residual;
import evenblade.judge.balance.Split;
import evenblade.judge.balance.Split.Share;
import evenblade.judge.balance.Weight;
import evenblade.judge.balance.WeightedReading;
import evenblade.machine.installation.HubCounting;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The JSON form of a balance answer. */
final class BalanceJson {
    private BalanceJson() {}

    static JsonFields of(BalanceAnswer answer) {
        Optional<Advice> advice = answer.advice();
        Optional<Split> split = advice.flatMap(Advice::split);
        return new JsonFields()
                .put("method", answer.method().word())
                .put("refused", answer.refused())
                .put(
                        "reasons",
                        answer.refusals().stream().map(BalanceJson::said).toList())
                .put(
                        "reasonCodes",
                        answer.refusals().stream().map(r -> r.code().word()).toList())
                .put(
                        "warnings",
                        answer.warnings().stream().map(BalanceJson::warning).toList())
                .put("correction", advice.map(BalanceJson::correction))
                .put("split", split.map(BalanceJson::shares).orElse(List.of()))
                .put("splitExact", advice.flatMap(Advice::exact).map(BalanceJson::shares))
                .put("leftGmm", split.map(Split::leftGmm))
                .put("predictedResidual", advice.map(Advice::residual).map(BalanceJson::residual))
                .put("closure", answer.closure())
                .put("scatterPercent", advice.map(a -> 100 * a.influence().scatterShare()))
                .put("scatterMeasured", advice.map(a -> a.influence().scatterMeasured()));
    }

    /** The correction of a job, with the runs that it rests on. Angles are counted against the rotation. */
    static JsonFields of(JobBalance job) {
        return of(job.answer())
                .put("job", job.job())
                .put("invented", job.invented())
                .put("channel", job.channel().map(JobBalance.Read::channel))
                .put("unit", job.channel().map(c -> c.unit().symbol()))
                .put("engineRpm", job.engineRpm())
                .put("anglesCounted", job.counted().map(HubCounting::word))
                .put(
                        "angleAsCountedDeg",
                        job.answer()
                                .advice()
                                .map(a -> job.asCounted(a.correction().value().angleDeg())))
                .put("runs", job.runs().stream().map(BalanceJson::run).toList())
                .put("weightsOn", job.on().stream().map(BalanceJson::weight).toList())
                .put("addNow", job.addNow().map(add -> new JsonFields()
                        .put("gmm", add.gmm())
                        .put("angleDeg", add.angleDeg())))
                .put("leaveAsItIs", job.leaveAsItIs())
                .put("checkRuns", job.checks().stream().map(BalanceJson::check).toList())
                .put("leftOut", WarningText.json(job.warnings()));
    }

    /** Readings with the engine standing. */
    static JsonFields of(BalanceAtRest rest) {
        if (rest instanceof BalanceAtRest.Bench bench) {
            return new JsonFields()
                    .put("method", "bench")
                    .put("belowFriction", bench.readings().belowFriction())
                    .put("frictionGmm", bench.readings().frictionGmm())
                    .put("gmm", bench.readings().correction().gmm())
                    .put("angleDeg", bench.readings().correction().angleDeg());
        }
        BalanceAtRest.Scale scale = (BalanceAtRest.Scale) rest;
        return new JsonFields()
                .put("method", "scale")
                .put("standardErrorGmm", scale.errorGmm())
                .put(
                        "layouts",
                        scale.choices().stream()
                                .map(c -> new JsonFields()
                                        .put("layout", c.layout().text())
                                        .put("gmm", c.unbalance().gmm())
                                        .put("angleDeg", c.unbalance().angleDeg())
                                        .put("trackSpreadMm", c.trackSpreadMm()))
                                .toList());
    }

    private static JsonFields run(JobBalance.Run run) {
        return new JsonFields()
                .put("id", run.id())
                .put("name", run.name())
                .put("propellerRpm", run.conditions().propellerRpm())
                .put("amplitude", run.reading().map(WeightedReading::amplitude))
                .put("standardError", run.reading().map(WeightedReading::standardError))
                .put("phaseDeg", run.reading().map(WeightedReading::phaseDeg).orElse(OptionalDouble.empty()))
                .put(
                        "weights",
                        run.reading().map(WeightedReading::weights).orElse(List.of()).stream()
                                .map(BalanceJson::weight)
                                .toList());
    }

    private static JsonFields weight(Weight weight) {
        return new JsonFields()
                .put("massG", weight.massG())
                .put("radiusMm", weight.radiusMm())
                .put("angleDeg", weight.angleDeg());
    }

    private static JsonFields check(JobBalance.CheckRun check) {
        return new JsonFields()
                .put("id", check.run().id())
                .put("predicted", residual(check.predicted()))
                .put("amplitude", check.run().reading().orElseThrow().amplitude())
                .put("fits", check.check().fits())
                .put("chance", check.check().chance());
    }

    private static JsonFields correction(Advice advice) {
        Correction c = advice.correction();
        double radius = advice.radiusMm();
        return new JsonFields()
                .put("massG", advice.massG())
                .put("radiusMm", radius)
                .put("angleDeg", c.value().angleDeg())
                .put("standardErrorG", c.standardErrorGmm() / radius)
                .put("standardErrorDeg", c.standardErrorDeg())
                .put("ciLowG", c.lowGmm() / radius)
                .put("ciHighG", c.highGmm() / radius)
                .put("ciBelowDeg", c.belowDeg())
                .put("ciAboveDeg", c.aboveDeg())
                .put("gmm", c.value().gmm())
                .put("ounceInches", c.value().ounceInches());
    }

    private static List<JsonFields> shares(Split split) {
        return split.shares().stream().map(BalanceJson::share).toList();
    }

    private static JsonFields share(Share share) {
        return new JsonFields()
                .put("place", share.place().name())
                .put("angleDeg", share.place().angleDeg())
                .put("radiusMm", share.place().radiusMm())
                .put("massG", share.massG())
                .put("piecesG", share.piecesG());
    }

    private static JsonFields residual(Residual residual) {
        return new JsonFields()
                .put("amplitude", residual.amplitude())
                .put("ciLow", residual.low())
                .put("ciHigh", residual.high());
    }

    private static JsonFields warning(Objection objection) {
        return WarningText.json(objection.code(), objection.fact());
    }

    private static String said(Objection objection) {
        return WarningText.of(objection.fact());
    }
}
