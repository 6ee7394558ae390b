package evenblade.judge.findings;

import evenblade.base.fact.Fact;
import evenblade.judge.tracking.RunOutTest;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Hub and flange: a track error that stays on the hub when the blades move, and a face that runs out. */
final class FlangeRule implements Rule {
    @Override
    public Cause cause() {
        return Cause.FLANGE;
    }

    @Override
    public Optional<Assessment> weigh(Stage stage) {
        PropellerOnceFeatures once = new PropellerOnceFeatures(stage);
        StaticFeatures still = new StaticFeatures(stage);
        List<EvidenceItem> pieces = new ArrayList<>(still.runOut(3, -3));
        List<EvidenceItem> verdict = still.verdict(-4, 3);
        pieces.addAll(verdict);
        boolean pointed = pieces.stream().anyMatch(p -> p.points() > 0);
        if (!pointed) {
            return Optional.empty();
        }
        pieces.addAll(once.ways(-1));
        pieces.addAll(TieFeatures.of(stage, 1, -2));
        Optional<EvidenceItem> large = once.large(1);
        large.ifPresent(pieces::add);
        if (large.isEmpty() && once.measured()) {
            pieces.add(once.small(-2));
        }
        pieces.addAll(still.pitch(-1, 0));
        stage.track().flatMap(StaticEvidence.Track::runOutTest).ifPresent(test -> {
            int points =
                    switch (test.answer()) {
                        case EXPLAINS -> 2;
                        case EXPLAINS_PART -> 1;
                        case DOES_NOT_EXPLAIN -> -2;
                        case TOO_SMALL_TO_TELL -> 0;
                    };
            if (points != 0) {
                pieces.add(new EvidenceItem(
                        test.fact(), points, EvidenceItem.Origin.STANDING, EvidenceRef.Whole.TIP_MARKS));
            }
        });
        return Optional.of(new Assessment(
                        Fact.of(FindingFact.POINTS_TO_FLANGE),
                        pieces,
                        true,
                        Math.max(still.spreadMm(), once.size()),
                        Fact.of(next(stage, still)))
                .atMost(once.surest(still.runOutMiddling()))
                .carrying(once.carried()));
    }

    /** Marks that were out, with none taken since the last change, don't say that it was put right. */
    @Override
    public boolean mayPersist(Stage stage, double symptom) {
        return stage.staleMarks();
    }

    private static FindingFact next(Stage stage, StaticFeatures still) {
        if (!still.runOutRead()) {
            return FindingFact.READ_RUN_OUT;
        }
        boolean told = stage.track()
                .flatMap(StaticEvidence.Track::runOutTest)
                .map(t -> t.answer() == RunOutTest.Answer.EXPLAINS)
                .orElse(false);
        return told ? FindingFact.CLEAN_FACE : FindingFact.CLEAN_SOCKETS;
    }
}
