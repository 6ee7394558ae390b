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
        PropellerOnceFeatures once = new PropellerOnceFeatures(stage);
        Optional<EvidenceItem> large = once.large(2);
        if (large.isEmpty()) {
            return Optional.empty();
        }
        StaticFeatures still = new StaticFeatures(stage);
        List<EvidenceItem> pieces = new ArrayList<>();
        pieces.add(large.get());
        pieces.addAll(once.ways(1));
        pieces.addAll(once.risesWithSquare(1, -4));
        pieces.addAll(still.track(-3, 1));
        pieces.addAll(still.pitch(-3, 1));
        pieces.addAll(still.runOut(-3, 1));
        List<PropellerOnceFeatures.HalfOrder> halves = once.halfOrders();
        if (LooseMountRule.several(halves)) {
            pieces.add(LooseMountRule.told(-4, halves));
        }
        // A pull at the disc and a couple from track or pitch shake one place alike: only the readings tell them apart.
        boolean told = still.clears()
                && once.tooMuch()
                && !once.ways(1).stream().anyMatch(p -> p.points() < 0)
                && once.steepRise(1).isEmpty();
        boolean read = still.tracked() && still.pitchRead();
        Fact next = Fact.of(
                stage.disc().isEmpty()
                        ? FindingFact.MEASURE_ALONG_AND_ACROSS
                        : read ? FindingFact.BALANCE : FindingFact.READ_BEFORE_BALANCE);
        return Optional.of(new Assessment(Fact.of(FindingFact.POINTS_TO_MASS), pieces, false, once.size(), next)
                .atMost(told ? 1 : read ? Confidence.MOST_IN_DOUBT : Confidence.MOST_OF_FOUR)
                .carrying(once.carried()));
    }
}
