package evenblade.judge.findings;

import static evenblade.judge.findings.EvidenceItem.running;
import static evenblade.judge.findings.PropellerOnceFeatures.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A pull that turns rises with speed; shaking that peaks at one rpm and falls above it is the mount answering. */
final class ResonanceRule implements Rule {
    private static final int DWELLS_FOR_A_PEAK = 3;

    @Override
    public Cause cause() {
        return Cause.RESONANCE;
    }

    private static Assessment slow(EvidenceItem rise) {
        return new Assessment(
                "1× rises too slowly for a turning pull, which may point to a resonance on the mounts near these speeds.",
                List.of(rise),
                false,
                1,
                "Run more dwells, slower and faster ones, to see whether 1× peaks between them.");
    }

    @Override
    public Optional<Assessment> weigh(Stage stage) {
        PropellerOnceFeatures once = PropellerOnceFeatures.of(stage);
        Optional<PropellerOnceFeatures.Fall> fall = once.fall();
        if (fall.isEmpty()) {
            return once.large(1).flatMap(large -> once.slowRise(4)).map(ResonanceRule::slow);
        }
        List<EvidenceItem> pieces = new ArrayList<>();
        pieces.add(running(4, fall.get().text()));
        long falling = once.falling();
        if (falling > 1) {
            pieces.add(running(2, text("the same fall in %d channels or runs of %s", falling, stage.names())));
        }
        int dwells =
                stage.runs().stream().mapToInt(r -> r.numbers().dwells()).max().orElse(0);
        if (dwells < DWELLS_FOR_A_PEAK) {
            pieces.add(running(-1, dwells + " dwells only: the peak itself isn't seen"));
        }
        List<PropellerOnceFeatures.HalfOrder> halves = once.halfOrders();
        if (LooseMountRule.several(halves)) {
            pieces.add(running(-1, LooseMountRule.told(halves)));
        }
        return Optional.of(new Assessment(
                text(
                        "1× peaks below %.0f engine rpm, which points to a resonance on the mounts rather than a worse"
                                + " propeller.",
                        fall.get().fast().engineRpm()),
                pieces,
                false,
                fall.get().share(),
                "Run more dwells around the peak, and look at the mounts' rubbers; hold runs against each other at the"
                        + " same rpm only."));
    }
}
