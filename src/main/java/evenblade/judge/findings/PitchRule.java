package evenblade.judge.findings;

import static evenblade.judge.findings.EvidenceItem.running;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Value.Quoted;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** A blade of other pitch lifts more: 1× along and as a couple, and unlike track it raises 2× along too. */
final class PitchRule implements Rule {
    @Override
    public Cause cause() {
        return Cause.PITCH;
    }

    @Override
    public Optional<Assessment> weigh(Stage stage) {
        PropellerOnceFeatures once = new PropellerOnceFeatures(stage);
        StaticFeatures still = new StaticFeatures(stage);
        OptionalDouble twice = once.twiceOverOnceAlong();
        boolean twiceHigh = twice.orElse(0) > Thresholds.TWICE_OVER_ONCE;
        Optional<EvidenceItem> large = once.large(1);
        boolean middling = still.pitchMiddling() && large.isPresent();
        if (!still.pitchOut()
                && !middling
                && !(large.isPresent() && once.rocks() && (twiceHigh || !still.pitchRead()))) {
            return Optional.empty();
        }
        List<EvidenceItem> pieces = new ArrayList<>(still.pitch(3, -3));
        pieces.addAll(once.ways(-1));
        if (twiceHigh && large.isPresent()) {
            pieces.add(running(
                    2, stage.ref(), FindingFact.TWICE_ALONG, Measure.NUMBER.of(twice.getAsDouble()), stage.names()));
        }
        large.map(l -> once.tooMuch() ? once.large(2).orElse(l) : l).ifPresent(pieces::add);
        if (large.isEmpty() && once.measured()) {
            pieces.add(once.small(-2));
        }
        pieces.addAll(still.track(-1, 1));
        List<PropellerOnceFeatures.HalfOrder> halves = once.halfOrders();
        if (LooseMountRule.several(halves)) {
            pieces.add(LooseMountRule.told(-4, halves));
        }
        return Optional.of(new Assessment(
                        statement(still),
                        pieces,
                        true,
                        still.pitchOut()
                                ? stage.pitch().orElseThrow().readings().spreadDeg()
                                : once.size(),
                        Fact.of(still.pitchRead() ? FindingFact.SET_PITCH : FindingFact.READ_PITCH))
                .atMost(still.pitchRead() ? 1 : Confidence.MOST_OF_FOUR)
                .atMost(once.surest(still.pitchMiddling()))
                .carrying(once.carried()));
    }

    private static Fact statement(StaticFeatures still) {
        if (!still.pitchOut()) {
            return Fact.of(FindingFact.POINTS_TO_PITCH);
        }
        Map.Entry<String, Double> odd = still.oddPitch();
        return Fact.of(FindingFact.POINTS_TO_PITCH_OF, new Quoted(odd.getKey()), Measure.ANGLE.of(odd.getValue()));
    }
}
