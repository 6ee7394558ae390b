package evenblade.judge.findings;

import static evenblade.judge.findings.EvidenceItem.running;
import static evenblade.judge.findings.EvidenceItem.standing;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.machine.installation.Shaft;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The answer where no rule leans any way in the last stage: nothing stands out, or what does is not told yet. */
final class QuietMachine {
    private static final int STANDS_OUT = 5; // ours, in points

    private QuietMachine() {}

    /** The answer, where hints of a cause may be left that none leans to. */
    static Optional<Finding> in(Stage last, boolean hints) {
        Optional<EvidenceItem> large = PropellerOnceFeatures.of(last).large(STANDS_OUT);
        return large.isPresent()
                ? Optional.of(untold(large.get(), PropellerOnceFeatures.of(last).carried()))
                : quiet(last, hints);
    }

    /** 1× is large and no rule leans any way. */
    private static Finding untold(EvidenceItem large, Optional<Carried> carried) {
        return new Finding(
                Cause.UNTOLD,
                Fact.of(FindingFact.UNTOLD),
                List.of(large),
                List.of(),
                Fact.of(FindingFact.MEASURE_ALL),
                Confidence.of(large.points()),
                Optional.empty(),
                carried);
    }

    private static Optional<Finding> quiet(Stage last, boolean hints) {
        List<EvidenceItem> pieces = new ArrayList<>();
        last.sightings()
                .of(Shaft.PROPELLER, 1)
                .fastest()
                .ifPresent(s -> pieces.add(running(
                        3, s.ref(), FindingFact.ONCE_AT_MOST, s.velocity(), Fact.of(s.direction()), s.where())));
        last.sightings()
                .of(Shaft.CRANK, 1)
                .strongest()
                .ifPresent(s -> pieces.add(running(1, s.ref(), FindingFact.CRANK_AT_MOST, s.size(), s.where())));
        StaticFeatures still = StaticFeatures.of(last);
        last.track()
                .ifPresent(t -> pieces.add(standing(
                        still.trackOut() ? -3 : 1,
                        EvidenceRef.Whole.TIP_MARKS,
                        FindingFact.MARKS_SPREAD,
                        StaticFeatures.length(t.spreadMm()))));
        last.pitch()
                .ifPresent(p -> pieces.add(standing(
                        still.pitchOut() ? -3 : 1,
                        EvidenceRef.Whole.BLADE_ANGLES,
                        FindingFact.ANGLES_SPREAD,
                        Measure.ANGLE.of(p.readings().spreadDeg()))));
        if (pieces.isEmpty()) {
            return Optional.empty();
        }
        // A crank 1× that lies on another line hides what makes it, so that nothing can't be said of it with
        // confidence.
        boolean judged = !hints
                && last.sightings().of(Shaft.PROPELLER, 1).alone().detected().directionsKnown()
                && !last.sightings().of(Shaft.CRANK, 1).alone().isEmpty()
                && !EngineFeatures.of(last).fires(1);
        int points = pieces.stream().mapToInt(EvidenceItem::points).sum();
        return Optional.of(new Finding(
                Cause.NOTHING,
                last.runs().isEmpty()
                        ? Fact.of(FindingFact.NOTHING_STANDING)
                        : Fact.of(FindingFact.NOTHING_IN, last.names()),
                pieces.stream().filter(p -> p.points() >= 0).toList(),
                pieces.stream().filter(p -> p.points() < 0).toList(),
                Fact.of(last.runs().isEmpty() ? FindingFact.MAKE_A_RUN : FindingFact.CARRY_ON),
                Confidence.of(points).atMost(judged ? 1 : Confidence.MOST_ONE_SIDED),
                Optional.empty(),
                Optional.empty()));
    }
}
