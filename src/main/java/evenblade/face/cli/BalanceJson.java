package evenblade.face.cli;

import evenblade.base.json.JsonFields;
import evenblade.face.app.BalanceWords;
import evenblade.judge.balance.BalanceAnswer;
import evenblade.judge.balance.BalanceAnswer.Advice;
import evenblade.judge.balance.Correction;
import evenblade.judge.balance.Objection;
import evenblade.judge.balance.Residual;
import evenblade.judge.balance.Share;
import evenblade.judge.balance.Split;
import java.util.List;
import java.util.Optional;

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
                        answer.refusals().stream().map(BalanceWords::sentence).toList())
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
        return new JsonFields().put("code", objection.code().word()).put("message", BalanceWords.sentence(objection));
    }
}
