package evenblade.judge.findings;

import static evenblade.judge.findings.EvidenceItem.running;
import static evenblade.judge.findings.EvidenceItem.standing;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Value.Listed;
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
        PropellerOnceFeatures once = new PropellerOnceFeatures(stage);
        StaticFeatures still = new StaticFeatures(stage);
        Optional<EvidenceItem> large = once.large(1);
        boolean middling = still.trackMiddling() && !still.verdict(2, 0).isEmpty() && large.isPresent();
        if (!still.trackOut() && !middling && !(once.rocks() && large.isPresent() && !still.tracked())) {
            return Optional.empty();
        }
        List<EvidenceItem> pieces = new ArrayList<>(still.track(3, -3));
        pieces.addAll(still.verdict(2, -6));
        pieces.addAll(once.ways(-1));
        pieces.addAll(TieFeatures.of(stage, 1, -2));
        large.ifPresent(pieces::add);
        if (large.isEmpty() && once.measured()) {
            pieces.add(once.small(-2));
        }
        pieces.addAll(still.pitch(-1, 1));
        if (still.runOutShareOfSpread() > 0.5) {
            pieces.add(standing(
                    -2,
                    EvidenceRef.Whole.FACE_RUN_OUT,
                    FindingFact.RUN_OUT_MAKES,
                    Measure.SHARE.of(still.runOutShareOfSpread())));
        }
        once.twiceOverOnceAlong().ifPresent(r -> {
            if (r > Thresholds.TWICE_OVER_ONCE) {
                pieces.add(running(-1, stage.ref(), FindingFact.TWICE_NOT_TRACK, Measure.NUMBER.of(r)));
            }
        });
        return Optional.of(new Assessment(
                        statement(still), pieces, true, Math.max(still.spreadMm(), once.size()), Fact.of(next(still)))
                .atMost(still.tracked() ? 1 : Confidence.MOST_OF_FOUR)
                .atMost(once.surest(still.trackMiddling()))
                .carrying(once.carried()));
    }

    /** Marks that were out, with none taken since the last change, don't say that it was put right. */
    @Override
    public boolean mayPersist(Stage stage, double symptom) {
        return stage.staleMarks();
    }

    private static Fact statement(StaticFeatures still) {
        Optional<TrackVerdict> blade = still.verdict().filter(v -> v.kind() == TrackVerdict.Kind.BLADE);
        return blade.filter(v -> !v.names().isEmpty())
                .map(v -> Fact.of(FindingFact.POINTS_TO_TRACK_OF, Listed.quoted(v.names())))
                .orElse(Fact.of(FindingFact.POINTS_TO_TRACK));
    }

    private static FindingFact next(StaticFeatures still) {
        if (!still.tracked()) {
            return FindingFact.MARK_TIPS;
        }
        return switch (still.verdict().orElseThrow().kind()) {
            case NOT_SEPARABLE -> FindingFact.MOVE_BLADES;
            case MARKS_CONTRADICT -> FindingFact.MARK_TIPS;
            case POSITION, BOTH -> FindingFact.READ_RUN_OUT_FIRST;
            case BLADE, WITHIN_READING_ERROR -> FindingFact.RESEAT_BLADE;
        };
    }
}
