package evenblade.judge.findings;

import static evenblade.judge.findings.EvidenceItem.running;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Cylinders alike leave only the firing orders; a weak one lifts crank ½× (four-stroke) or 1× (two-stroke). */
final class WeakCylinderRule implements Rule {
    @Override
    public Cause cause() {
        return Cause.WEAK_CYLINDER;
    }

    @Override
    public Optional<Assessment> weigh(Stage stage) {
        EngineFeatures engine = EngineFeatures.of(stage);
        double order = engine.weakOrder();
        OptionalDouble share = engine.overFiring(order);
        if (!engine.severalCylinders() || share.orElse(0) < Thresholds.HALF_OVER_FIRING) {
            return Optional.empty();
        }
        boolean half = order < 1;
        List<EvidenceItem> pieces = new ArrayList<>();
        OrderObservation most = engine.crank(order).detected().strongest().orElseThrow();
        pieces.add(running(
                half ? 5 : 3,
                most.ref(),
                FindingFact.WEAK_ORDER,
                EngineFeatures.order(order),
                Measure.SHARE.of(share.getAsDouble()),
                engine.firingName(),
                most.size(),
                most.where()));
        double other = half ? 1.5 : 3;
        OptionalDouble more = engine.overFiring(other);
        if (more.orElse(0) > Thresholds.HALF_OVER_FIRING) {
            pieces.add(running(
                    1,
                    stage.ref(),
                    FindingFact.CRANK_RAISED_TOO,
                    EngineFeatures.order(other),
                    Measure.SHARE.of(more.getAsDouble())));
        }
        if (!half) {
            engine.uprightOfCrankAgainstFiring().ifPresent(r -> pieces.add(CrankRule.direction(stage, r, -3, 2)));
        } else if (engine.overFiring(1).orElse(0) > 2 * share.getAsDouble()) {
            pieces.add(running(
                    -2,
                    stage.ref(),
                    FindingFact.CRANK_FAR_LARGER,
                    Measure.SHARE.of(engine.overFiring(1).getAsDouble())));
        }
        return Optional.of(new Assessment(
                Fact.of(FindingFact.POINTS_TO_CYLINDER, EngineFeatures.order(order)),
                pieces,
                false,
                share.getAsDouble(),
                Fact.of(FindingFact.COMPARE_COMPRESSION)));
    }
}
