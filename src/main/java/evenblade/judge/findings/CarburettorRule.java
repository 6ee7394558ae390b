package evenblade.judge.findings;

import static evenblade.judge.findings.EvidenceItem.running;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.machine.installation.Engine;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Two carburettors out of step load every other firing: crank 1× and 3×, shaped like gas torque, no half order. */
final class CarburettorRule implements Rule {
    @Override
    public Cause cause() {
        return Cause.CARBURETTORS;
    }

    @Override
    public Optional<Assessment> weigh(Stage stage) {
        EngineFeatures engine = EngineFeatures.of(stage);
        Optional<EvidenceItem> raised = CrankRule.raised(engine);
        if (raised.isEmpty() || !engine.severalCylinders()) {
            return Optional.empty();
        }
        List<EvidenceItem> pieces = new ArrayList<>(List.of(raised.get()));
        engine.uprightOfCrankAgainstFiring().ifPresent(r -> pieces.add(CrankRule.direction(stage, r, -4, 2)));
        OptionalDouble third = engine.overFiring(3);
        if (third.orElse(0) > Thresholds.HALF_OVER_FIRING) {
            pieces.add(running(
                    1,
                    stage.ref(),
                    FindingFact.CRANK_RAISED_TOO,
                    EngineFeatures.order(3),
                    Measure.SHARE.of(third.getAsDouble())));
        }
        boolean fourStroke = stage.installation().engine().cycle() == Engine.Cycle.FOUR_STROKE;
        OptionalDouble half = fourStroke ? engine.overFiring(0.5) : OptionalDouble.empty();
        if (half.orElse(0) > Thresholds.HALF_OVER_FIRING) {
            pieces.add(running(
                    -4,
                    stage.ref(),
                    FindingFact.CRANK_THERE_TOO,
                    EngineFeatures.order(0.5),
                    Measure.SHARE.of(half.getAsDouble())));
        } else if (fourStroke) {
            pieces.add(running(1, stage.ref(), FindingFact.NO_WEAK_CYLINDER));
        }
        return Optional.of(new Assessment(
                Fact.of(FindingFact.POINTS_TO_CARBURETTORS),
                pieces,
                false,
                engine.overFiring(1).orElse(0),
                Fact.of(FindingFact.SET_CARBURETTORS)));
    }
}
