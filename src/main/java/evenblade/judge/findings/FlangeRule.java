package evenblade.judge.findings;

import static evenblade.judge.findings.EvidenceItem.standing;

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
        PropellerOnceFeatures once = PropellerOnceFeatures.of(stage);
        StaticFeatures still = StaticFeatures.of(stage);
        List<EvidenceItem> pieces = new ArrayList<>(still.runOut(3, -3));
        List<EvidenceItem> verdict = still.verdict(-4, 3);
        pieces.addAll(verdict);
        boolean pointed = pieces.stream().anyMatch(p -> p.points() > 0);
        if (!pointed) {
            return Optional.empty();
        }
        pieces.addAll(once.ways(r -> r > Thresholds.ALONG ? 2 : r < Thresholds.ACROSS ? -3 : 0));
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
                pieces.add(standing(points, test.text()));
            }
        });
        return Optional.of(new Assessment(
                "The evidence points to the hub or the flange, not to a blade.",
                pieces,
                true,
                Math.max(still.spreadMm(), once.size()),
                next(stage, still)));
    }

    private static String next(Stage stage, StaticFeatures still) {
        if (!still.runOutRead()) {
            return "Take the propeller off, clean both faces, read the face run-out of the flange and carry it to the tip.";
        }
        boolean told = stage.track()
                .flatMap(StaticEvidence.Track::runOutTest)
                .map(t -> t.answer() == RunOutTest.Answer.EXPLAINS)
                .orElse(false);
        return told
                ? "Clean the face, look for a burr, read the run-out again; send the flange to its maker's limits before"
                        + " the next run."
                : "Clean face and sockets, look for dirt, a burr or a blade that binds; move the blades and mark again.";
    }
}
