package evenblade.judge.findings;

import static evenblade.judge.findings.EvidenceItem.running;
import static evenblade.judge.findings.PropellerOnceFeatures.text;

import evenblade.judge.findings.PropellerOnceFeatures.HalfOrder;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** A joint that opens and shuts makes a row of half and whole propeller orders. */
final class LooseMountRule implements Rule {
    @Override
    public Cause cause() {
        return Cause.LOOSE_MOUNT;
    }

    @Override
    public Optional<Assessment> weigh(Stage stage) {
        PropellerOnceFeatures once = PropellerOnceFeatures.of(stage);
        List<HalfOrder> halves = once.halfOrders();
        if (halves.isEmpty()) {
            return Optional.empty();
        }
        List<EvidenceItem> pieces = new ArrayList<>();
        pieces.add(running(several(halves) ? 5 : 2, told(halves)));
        once.large(1).ifPresent(pieces::add);
        long runs = halves.stream().map(HalfOrder::run).distinct().count();
        if (halves.size() > 2 * runs && several(halves)) {
            pieces.add(running(1, text("seen %d times over dwells and channels of %s", halves.size(), stage.names())));
        }
        return Optional.of(new Assessment(
                "Half orders of the propeller point to something that chatters: a loose mount.",
                pieces,
                false,
                strongest(halves).amplitude(),
                "Check every mount bolt, bush and bracket against its maker's torque, then repeat the run at the same"
                        + " rpm."));
    }

    /** Whether at least two different half orders are there. */
    static boolean several(List<HalfOrder> halves) {
        return halves.stream().map(HalfOrder::order).distinct().count() > 1;
    }

    static String told(List<HalfOrder> halves) {
        HalfOrder most = strongest(halves);
        return text(
                "%d different half order(s) of the propeller, strongest %.1f× with %.3g %s at %.0f engine rpm in '%s'",
                halves.stream().map(HalfOrder::order).distinct().count(),
                most.order(),
                most.amplitude(),
                most.unit(),
                most.engineRpm(),
                most.run());
    }

    private static HalfOrder strongest(List<HalfOrder> halves) {
        return halves.stream()
                .max(Comparator.comparingDouble(HalfOrder::amplitude))
                .orElseThrow();
    }
}
