package evenblade.judge.findings;

import static evenblade.judge.findings.EvidenceItem.running;
import static evenblade.judge.findings.EvidenceItem.standing;
import static evenblade.judge.findings.PropellerOnceFeatures.text;

import evenblade.machine.installation.Shaft;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The answer where no rule leans any way in the last stage: nothing stands out, or what does is not told yet. */
final class QuietMachine {
    private static final int STANDS_OUT = 5;

    private QuietMachine() {}

    static Optional<Finding> in(Stage last) {
        Optional<EvidenceItem> large = PropellerOnceFeatures.of(last).large(STANDS_OUT);
        return large.isPresent() ? Optional.of(untold(large.get())) : quiet(last);
    }

    /** 1× is large and no rule leans any way. */
    private static Finding untold(EvidenceItem large) {
        return new Finding(
                Cause.UNTOLD,
                "Propeller 1× stands out, and nothing measured so far points to what makes it.",
                List.of(large),
                List.of(),
                "Measure 1× along and across the shaft at three speeds, mark the tips in two layouts, read the blade angles"
                        + " and the flange's run-out.",
                Confidence.of(large.points()),
                Optional.empty());
    }

    private static Optional<Finding> quiet(Stage last) {
        List<EvidenceItem> pieces = new ArrayList<>();
        last.sightings()
                .of(Shaft.PROPELLER, 1)
                .fastest()
                .ifPresent(s -> pieces.add(running(
                        4,
                        text(
                                "propeller 1× is at most %.2f mm/s peak, %s %s",
                                s.velocityMmS().getAsDouble(), s.direction().word(), s.where()))));
        last.sightings()
                .of(Shaft.CRANK, 1)
                .strongest()
                .ifPresent(s -> pieces.add(running(1, text("crank 1× is at most %s %s", s.size(), s.where()))));
        last.track().ifPresent(t -> pieces.add(standing(1, text("tip marks spread %.1f mm", t.spreadMm()))));
        last.pitch()
                .ifPresent(p -> pieces.add(standing(
                        1, text("blade angles spread %.2f°", p.readings().spreadDeg()))));
        if (pieces.isEmpty()) {
            return Optional.empty();
        }
        int points = pieces.stream().mapToInt(EvidenceItem::points).sum();
        return Optional.of(new Finding(
                Cause.NOTHING,
                last.runs().isEmpty()
                        ? "Nothing stands out in what was read with the engine off."
                        : "Nothing stands out in " + last.names() + ".",
                pieces,
                List.of(),
                last.runs().isEmpty()
                        ? "Make a ground run with dwells at three speeds."
                        : "Carry on as planned; repeat the run now and then at the same rpm with the same sensor.",
                Confidence.of(points),
                Optional.empty()));
    }
}
