package evenblade.judge.findings;

import static evenblade.judge.findings.EvidenceItem.running;
import static evenblade.judge.findings.EvidenceItem.standing;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.machine.installation.Shaft;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The answer where no rule leans any way in the last stage and propeller 1× is small: nothing stands out. */
final class QuietMachine {
    private QuietMachine() {}

    /**
     * The answer.
     *
     * @param hint the surest cause that none leans to; 0 where none is left
     */
    static Optional<Finding> in(Stage last, double hint) {
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
        StaticFeatures still = new StaticFeatures(last);
        last.track()
                .ifPresent(t -> pieces.add(standing(
                        still.trackOut() ? -3 : 1,
                        EvidenceRef.Whole.TIP_MARKS,
                        FindingFact.MARKS_SPREAD,
                        StaticFeatures.length(t.spreadMm()))));
        if (last.staleMarks()) {
            pieces.add(standing(-3, EvidenceRef.Whole.TIP_MARKS, FindingFact.MARKS_STALE));
        }
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
        boolean judged = hint == 0
                && last.sightings().of(Shaft.PROPELLER, 1).alone().detected().directionsKnown()
                && !last.sightings().of(Shaft.CRANK, 1).alone().isEmpty()
                && !new EngineFeatures(last).fires(1);
        int points = pieces.stream().mapToInt(EvidenceItem::points).sum();
        return Optional.of(new Finding(
                Cause.NOTHING,
                last.runs().isEmpty()
                        ? Fact.of(FindingFact.NOTHING_STANDING)
                        : Fact.of(FindingFact.NOTHING_IN, last.names()),
                pieces.stream().filter(p -> p.points() >= 0).toList(),
                pieces.stream().filter(p -> p.points() < 0).toList(),
                Fact.of(
                        last.runs().isEmpty()
                                ? FindingFact.MAKE_A_RUN
                                : last.staleMarks() ? FindingFact.MARK_TIPS : FindingFact.CARRY_ON),
                Confidence.of(points).atMost(judged ? 1 : Math.min(Confidence.MOST_ONE_SIDED, 1 - hint)),
                Optional.empty(),
                Optional.empty(),
                List.of()));
    }
}
