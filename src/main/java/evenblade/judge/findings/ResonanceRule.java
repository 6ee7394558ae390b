package evenblade.judge.findings;

import static evenblade.judge.findings.EvidenceItem.running;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Value.Count;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A pull that turns rises with speed; shaking that peaks at one rpm and falls above it is the mount answering. */
final class ResonanceRule implements Rule {
    private static final int DWELLS_FOR_A_PEAK = 3; // one on either side

    @Override
    public Cause cause() {
        return Cause.RESONANCE;
    }

    private static Assessment slow(EvidenceItem rise) {
        return new Assessment(
                Fact.of(FindingFact.MAY_BE_RESONANCE), List.of(rise), false, 1, Fact.of(FindingFact.MORE_DWELLS));
    }

    @Override
    public Optional<Assessment> weigh(Stage stage) {
        PropellerOnceFeatures once = new PropellerOnceFeatures(stage);
        Optional<PropellerOnceFeatures.Fall> fall = once.fall();
        if (fall.isEmpty()) {
            Optional<EvidenceItem> strange = once.slowRise(4).or(() -> once.steepRise(4));
            return once.large(1)
                    .flatMap(large -> strange)
                    .map(ResonanceRule::slow)
                    .map(said -> said.toldApart(false).carrying(once.carried()));
        }
        List<EvidenceItem> pieces = new ArrayList<>();
        pieces.add(fall.get().item(4));
        long falling = once.falling();
        if (falling > 1) {
            pieces.add(running(2, stage.ref(), FindingFact.SAME_FALL, new Count(falling), stage.names()));
        }
        int dwells =
                stage.runs().stream().mapToInt(r -> r.numbers().dwells()).max().orElse(0);
        if (dwells < DWELLS_FOR_A_PEAK) {
            pieces.add(running(-1, stage.ref(), FindingFact.FEW_DWELLS, new Count(dwells)));
        }
        List<PropellerOnceFeatures.HalfOrder> halves = once.halfOrders();
        if (LooseMountRule.several(halves)) {
            pieces.add(LooseMountRule.told(-1, halves));
        }
        return Optional.of(new Assessment(
                        Fact.of(
                                FindingFact.POINTS_TO_RESONANCE,
                                Measure.ENGINE_RPM.of(fall.get().fast().engineRpm())),
                        pieces,
                        false,
                        fall.get().share(),
                        Fact.of(FindingFact.DWELLS_AROUND_PEAK))
                .toldApart(once.large(1).isPresent())
                .carrying(once.carried()));
    }
}
