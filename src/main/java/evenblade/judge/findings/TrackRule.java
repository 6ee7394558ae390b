package evenblade.judge.findings;

import static evenblade.judge.findings.EvidenceItem.running;
import static evenblade.judge.findings.EvidenceItem.standing;
import static evenblade.judge.findings.PropellerOnceFeatures.text;

import evenblade.judge.tracking.TrackVerdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A blade out of track shows in the tip marks, goes with the blade, and shakes along more than across. */
final class TrackRule implements Rule {
    @Override
    public Cause cause() {
        return Cause.TRACK;
    }

    @Override
    public Optional<Assessment> weigh(Stage stage) {
        PropellerOnceFeatures once = PropellerOnceFeatures.of(stage);
        StaticFeatures still = StaticFeatures.of(stage);
        boolean alongMost = once.alongOverAcross().orElse(0) > Thresholds.ALONG;
        Optional<EvidenceItem> large = once.large(1);
        if (!still.trackOut() && !(alongMost && large.isPresent() && !still.tracked())) {
            return Optional.empty();
        }
        List<EvidenceItem> pieces = new ArrayList<>(still.track(3, -3));
        pieces.addAll(still.verdict(2, -6));
        pieces.addAll(once.ways(r -> r > Thresholds.ALONG ? 3 : r < Thresholds.ACROSS ? -3 : 0));
        pieces.addAll(TieFeatures.of(stage, 1, -2));
        large.ifPresent(pieces::add);
        if (large.isEmpty() && once.measured()) {
            pieces.add(once.small(-2));
        }
        pieces.addAll(still.pitch(-2, 1));
        if (still.runOutShareOfSpread() > 0.5) {
            pieces.add(standing(
                    -2,
                    text(
                            "the flange's run-out alone makes %.0f %% of the spread at the tips",
                            100 * still.runOutShareOfSpread())));
        }
        once.twiceOverOnceAlong().ifPresent(r -> {
            if (r > Thresholds.TWICE_OVER_ONCE) {
                pieces.add(running(-1, text("2× along is %.2f of 1×, which track doesn't make", r)));
            }
        });
        return Optional.of(
                new Assessment(statement(still), pieces, true, Math.max(still.spreadMm(), once.size()), next(still)));
    }

    private static String statement(StaticFeatures still) {
        Optional<TrackVerdict> blade = still.verdict().filter(v -> v.kind() == TrackVerdict.Kind.BLADE);
        return blade.filter(v -> !v.names().isEmpty())
                .map(v -> "Tip marks and shaking point to track: blade " + String.join(" and ", v.names()) + ".")
                .orElse("The evidence points to a blade out of track.");
    }

    private static String next(StaticFeatures still) {
        if (!still.tracked()) {
            return "Mark the tips against a block that doesn't move, all blades in turn.";
        }
        return switch (still.verdict().orElseThrow().kind()) {
            case NOT_SEPARABLE -> "Move the blades round the hub, mark again: that tells blade from hub.";
            case MARKS_CONTRADICT -> "Mark the tips again before anything is moved: the marks contradict each other.";
            case POSITION, BOTH -> "Read the face run-out of the flange before any blade is touched.";
            case BLADE, WITHIN_READING_ERROR ->
                "Reseat that blade; then shim it as its maker allows, mark again, and repeat the run at the same rpm.";
        };
    }
}
