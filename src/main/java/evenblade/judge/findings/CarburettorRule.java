package evenblade.judge.findings;

import static evenblade.judge.findings.EvidenceItem.running;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Two carburettors out of step load every other firing: half the firing order, shaped like firing, and no other order. */
final class CarburettorRule implements Rule {
    @Override
    public Cause cause() {
        return Cause.CARBURETTORS;
    }

    @Override
    public Optional<Assessment> weigh(Stage stage) {
        EngineFeatures engine = new EngineFeatures(stage);
        double order = engine.alternateOrder().orElse(engine.weakOrder());
        double share = engine.overFiring(order).orElse(0);
        if (!engine.severalCylinders() || share < Thresholds.WEAK_OVER_FIRING || !engine.worthBlaming(order)) {
            return Optional.empty();
        }
        boolean byTurns = engine.alternateOrder().isPresent();
        OrderObservation most = engine.crank(order).detected().strongest().orElseThrow();
        List<EvidenceItem> pieces = new ArrayList<>();
        pieces.add(running(
                byTurns ? 4 : 3,
                most.ref(),
                FindingFact.WEAK_ORDER,
                EngineFeatures.order(order),
                Measure.SHARE.of(share),
                engine.firingName(),
                most.size(),
                most.where()));
        List<EvidenceItem> shape = CrankRule.shape(stage, engine, order, byTurns ? 1 : 0, -4);
        pieces.addAll(shape);
        if (byTurns) {
            pieces.add(others(stage, engine, share));
        }
        double third = engine.overFiring(3 * order).orElse(0);
        if (byTurns && third > Thresholds.HALF_OVER_FIRING) {
            pieces.add(running(
                    1,
                    stage.ref(),
                    FindingFact.CRANK_RAISED_TOO,
                    EngineFeatures.order(3 * order),
                    Measure.SHARE.of(third)));
        } else if (third * CrankRule.OVERTONE < share) {
            pieces.add(running(-3, stage.ref(), FindingFact.NO_OTHER_CRANK_ORDER));
        }
        pieces.addAll(LooseMountRule.rowOf(stage, engine, -3));
        boolean shaped = shape.stream().anyMatch(p -> p.points() > 0);
        return Optional.of(new Assessment(
                        Fact.of(FindingFact.POINTS_TO_CARBURETTORS, EngineFeatures.order(order)),
                        pieces,
                        false,
                        share,
                        Fact.of(byTurns ? FindingFact.SET_CARBURETTORS : FindingFact.CYLINDER_OR_CARBURETTOR))
                .toldApart(byTurns && shaped && !new PropellerOnceFeatures(stage).lifted())
                .atMost(byTurns ? 1 : Confidence.MOST_IN_DOUBT)
                .carrying(engine.carried(order)));
    }

    /** A weak cylinder raises its neighbours as much as the order of firing by turns. */
    private static EvidenceItem others(Stage stage, EngineFeatures engine, double share) {
        for (double order : engine.cylinderOrders()) {
            double other = engine.overFiring(order).orElse(0);
            if (other * Thresholds.OWN_CAUSE > share) {
                return running(
                        -4,
                        stage.ref(),
                        FindingFact.CRANK_THERE_TOO,
                        EngineFeatures.order(order),
                        Measure.SHARE.of(other));
            }
        }
        return running(1, stage.ref(), FindingFact.NO_WEAK_CYLINDER);
    }
}
