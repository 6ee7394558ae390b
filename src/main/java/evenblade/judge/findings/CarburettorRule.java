package evenblade.judge.findings;

import static evenblade.judge.findings.EvidenceItem.running;
import static evenblade.judge.findings.PropellerOnceFeatures.text;

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
        engine.uprightOfCrankAgainstFiring().ifPresent(r -> pieces.add(CrankRule.direction(r, -4, 2)));
        OptionalDouble third = engine.overFiring(3);
        if (third.orElse(0) > Thresholds.HALF_OVER_FIRING) {
            pieces.add(running(1, text("crank 3× is raised too: %.0f %% of firing", 100 * third.getAsDouble())));
        }
        boolean fourStroke = stage.installation().engine().cycle() == Engine.Cycle.FOUR_STROKE;
        OptionalDouble half = fourStroke ? engine.overFiring(0.5) : OptionalDouble.empty();
        if (half.orElse(0) > Thresholds.HALF_OVER_FIRING) {
            pieces.add(running(-4, text("crank ½× is there too: %.0f %% of firing", 100 * half.getAsDouble())));
        } else if (fourStroke) {
            pieces.add(running(1, "crank ½× doesn't stand out, so no single cylinder is weak"));
        }
        return Optional.of(new Assessment(
                "Crank 1× points to carburettors out of step.",
                pieces,
                false,
                engine.overFiring(1).orElse(0),
                "Set the carburettors to open together with gauges, then repeat the run with the same throttle."));
    }
}
