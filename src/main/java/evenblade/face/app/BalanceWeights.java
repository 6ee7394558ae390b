package evenblade.face.app;

import evenblade.judge.balance.Weight;
import evenblade.keep.job.Event;
import evenblade.keep.job.HubWeight;
import evenblade.keep.job.WeightsOn;
import evenblade.machine.installation.HubCounting;
import java.util.List;
import java.util.Optional;

/** Weights of a record as balancing takes them: grams, millimetres, degrees against the rotation. */
final class BalanceWeights {
    private BalanceWeights() {}

    static List<Weight> of(List<Event> on, Optional<HubCounting> counted) {
        return on.stream()
                .flatMap(event -> WeightsOn.putOn(event).stream())
                .map(weight -> of(weight, counted))
                .toList();
    }

    private static Weight of(HubWeight weight, Optional<HubCounting> counted) {
        return Weight.of(weight.massG(), weight.radiusMm(), againstRotation(weight.angleDeg(), counted));
    }

    static double againstRotation(double degrees, Optional<HubCounting> counted) {
        double turned = counted.filter(c -> c == HubCounting.WITH_ROTATION).isPresent() ? -degrees : degrees;
        return ((turned % 360) + 360) % 360;
    }
}
