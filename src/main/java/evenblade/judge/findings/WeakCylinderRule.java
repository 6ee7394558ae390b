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
        EngineFeatures engine = new EngineFeatures(stage);
        double order = engine.weakOrder();
        OptionalDouble share = engine.overFiring(order);
        if (!engine.severalCylinders()
                || share.orElse(0) < Thresholds.HALF_OVER_FIRING
                || !engine.worthBlaming(order)) {
            return Optional.empty();
        }
        List<EvidenceItem> pieces = new ArrayList<>();
        OrderObservation most = engine.crank(order).detected().strongest().orElseThrow();
        pieces.add(running(
                share.getAsDouble() < Thresholds.WEAK_OVER_FIRING ? 3 : 4,
                most.ref(),
                FindingFact.WEAK_ORDER,
                EngineFeatures.order(order),
                Measure.SHARE.of(share.getAsDouble()),
                engine.firingName(),
                most.size(),
                most.where()));
        List<EvidenceItem> shape = CrankRule.shape(stage, engine, order, 1, -2);
        pieces.addAll(shape);
        pieces.addAll(others(stage, engine, order));
        List<Double> strange = engine.strangeHalves();
        if (strange.size() > 1) {
            pieces.add(LooseMountRule.strange(stage, -3, strange));
        } else if (engine.halvesUnlikeFiring()) {
            pieces.add(LooseMountRule.unlike(stage, -2, engine));
        }
        if (engine.firingLifts()) {
            pieces.add(running(-1, stage.ref(), FindingFact.FIRING_LIFTS));
        }
        pieces.addAll(LooseMountRule.rowOf(stage, engine, -3));
        boolean byTurns = engine.alternateOrder().isPresent();
        boolean shaped = engine.cylinderOrders().stream()
                .filter(m -> engine.overFiring(m).orElse(0) > Thresholds.HALF_OVER_FIRING)
                .allMatch(m -> engine.likeFiring(m).orElse(0) >= Thresholds.LIKE_FIRING);
        boolean lifted = new PropellerOnceFeatures(stage).lifted();
        return Optional.of(new Assessment(
                        Fact.of(FindingFact.POINTS_TO_CYLINDER, EngineFeatures.order(order)),
                        pieces,
                        false,
                        share.getAsDouble(),
                        Fact.of(byTurns ? FindingFact.COMPARE_COMPRESSION : FindingFact.CYLINDER_OR_CARBURETTOR))
                .toldApart(byTurns
                        && shaped
                        && !lifted
                        && !engine.firingLifts()
                        && engine.leastOverFiring(order) >= Thresholds.WEAK_OVER_FIRING)
                .atMost(byTurns ? 1 : Confidence.MOST_IN_DOUBT)
                .carrying(engine.carried(order)));
    }

    /** One weak cylinder raises all orders that aren't firing's: another one there speaks for it, one far larger against it. */
    private static List<EvidenceItem> others(Stage stage, EngineFeatures engine, double order) {
        List<EvidenceItem> pieces = new ArrayList<>();
        double share = engine.overFiring(order).orElse(0);
        List<Double> more = engine.pureCylinderOrders().stream()
                .filter(m -> m != order && engine.overFiring(m).orElse(0) > share / CrankRule.OVERTONE)
                .toList();
        if (!more.isEmpty()) {
            pieces.add(running(
                    1,
                    stage.ref(),
                    FindingFact.CRANK_RAISED_TOO,
                    EngineFeatures.order(more.get(0)),
                    Measure.SHARE.of(engine.overFiring(more.get(0)).getAsDouble())));
        } else if (engine.cylinderOrders().size() > 1) {
            pieces.add(running(-3, stage.ref(), FindingFact.NO_OTHER_CRANK_ORDER));
        }
        OptionalDouble turns = engine.alternateOrder();
        if (turns.isPresent()) {
            double large = engine.overFiring(turns.getAsDouble()).orElse(0);
            if (large > Thresholds.OWN_CAUSE * share) {
                pieces.add(running(
                        -2,
                        stage.ref(),
                        FindingFact.CRANK_FAR_LARGER,
                        EngineFeatures.order(turns.getAsDouble()),
                        Measure.SHARE.of(large)));
            }
        }
        return pieces;
    }
}
