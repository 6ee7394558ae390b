package evenblade.judge.findings;

import static evenblade.judge.findings.EvidenceItem.running;
import static evenblade.judge.findings.PropellerOnceFeatures.text;

import evenblade.machine.installation.OrderTable;
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
                text(
                        "crank %s is %.0f %% of %s, %s at most %s; cylinders alike make none",
                        OrderTable.orderText(order),
                        100 * share.getAsDouble(),
                        engine.firingName(),
                        most.size(),
                        most.where())));
        double other = half ? 1.5 : 3;
        OptionalDouble more = engine.overFiring(other);
        if (more.orElse(0) > Thresholds.HALF_OVER_FIRING) {
            pieces.add(running(
                    1,
                    text(
                            "crank %s is raised too: %.0f %% of firing",
                            OrderTable.orderText(other), 100 * more.getAsDouble())));
        }
        if (!half) {
            engine.uprightOfCrankAgainstFiring().ifPresent(r -> pieces.add(CrankRule.direction(r, -3, 2)));
        } else if (engine.overFiring(1).orElse(0) > 2 * share.getAsDouble()) {
            pieces.add(running(
                    -2,
                    text(
                            "crank 1× is far larger: %.0f %% of firing",
                            100 * engine.overFiring(1).getAsDouble())));
        }
        return Optional.of(new Assessment(
                "Crank " + OrderTable.orderText(order) + " points to a weak cylinder.",
                pieces,
                false,
                share.getAsDouble(),
                "Compare compression and plugs cylinder by cylinder; then repeat the run with the same throttle."));
    }
}
