package evenblade.judge.findings;

import evenblade.base.fact.Fact;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Mass pulls across the shaft, rises with the square of speed, and leaves track and pitch as they are. */
final class MassRule implements Rule {
    @Override
    public Cause cause() {
        return Cause.MASS;
    }

    @Override
    public Optional<Assessment> weigh(Stage stage) {
        PropellerOnceFeatures once = PropellerOnceFeatures.of(stage);
        Optional<EvidenceItem> large = once.large(2);
        if (large.isEmpty()) {
            return Optional.empty();
        }
        StaticFeatures still = StaticFeatures.of(stage);
        List<EvidenceItem> pieces = new ArrayList<>();
        pieces.add(large.get());
        pieces.addAll(once.ways(r -> r < Thresholds.ACROSS ? 3 : r > Thresholds.ALONG ? -4 : 0));
        pieces.addAll(once.risesWithSquare(1, -4));
        pieces.addAll(still.track(-2, 1));
        pieces.addAll(still.pitch(-2, 1));
        pieces.addAll(still.runOut(-1, 0));
        List<PropellerOnceFeatures.HalfOrder> halves = once.halfOrders();
        if (LooseMountRule.several(halves)) {
            pieces.add(LooseMountRule.told(-4, halves));
        }
        boolean waysKnown = once.alongOverAcross().isPresent();
        Fact next = Fact.of(waysKnown ? FindingFact.BALANCE : FindingFact.MEASURE_ALONG_AND_ACROSS);
        return Optional.of(new Assessment(Fact.of(FindingFact.POINTS_TO_MASS), pieces, false, once.size(), next));
    }
}
