package evenblade.judge.findings;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Value;
import evenblade.base.fact.Value.Listed;
import evenblade.base.fact.Value.Quoted;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Causes that would all have left the numbers of a stage, where no one of them is sure: they are named together, with the
 * measurement that would tell them apart, in place of a guess.
 */
final class OneOfSeveral {
    private static final Set<Cause> OF_PROPELLER = Set.of(Cause.MASS, Cause.TRACK, Cause.PITCH, Cause.FLANGE);
    private static final Set<Cause> OF_CRANK =
            Set.of(Cause.WEAK_CYLINDER, Cause.CARBURETTORS, Cause.CRANK, Cause.LOOSE_MOUNT);
    /** Points of a large 1×: it has a cause, whichever. */
    private static final int STANDS_OUT = 5;
    /** Lines this near (as a share) count as one: a dwell of 20 s at 30 Hz splits them by about this. */
    private static final double SAME_LINE = 0.003;

    private static final Comparator<Finding> SUREST_FIRST = Comparator.comparingDouble(
                    (Finding f) -> f.sureness().share())
            .thenComparingInt(Finding::points)
            .reversed();

    private OneOfSeveral() {}

    static List<Finding> of(Stage last, List<Finding> found) {
        List<Finding> groups = new ArrayList<>();
        ofPropeller(last, found).ifPresent(groups::add);
        ofCrank(last, found).ifPresent(groups::add);
        ofSharedLine(last, found).ifPresent(groups::add);
        return groups;
    }

    /** A strong line on which the orders of two shafts lie: whatever makes either may be behind it. */
    private static Optional<Finding> ofSharedLine(Stage last, List<Finding> found) {
        EngineFeatures engine = new EngineFeatures(last);
        OrderObservations shared = last.sightings()
                .detected()
                .only(s -> !s.alone() && s.velocityMmS().isPresent());
        Optional<OrderObservation> most = shared.only(s -> s.velocityMmS().getAsDouble() >= floor(s, engine))
                .fastest();
        if (most.isEmpty()) {
            return Optional.empty();
        }
        List<Cause> members = new ArrayList<>();
        List<String> names = new ArrayList<>();
        for (OrderObservation s :
                shared.atMomentOf(most.get()).in(most.get().direction()).all()) {
            double apart =
                    Math.abs(s.reading().frequencyHz() / most.get().reading().frequencyHz() - 1);
            if (apart < SAME_LINE) {
                names.add(s.reading().line().name());
                (s.reading().line().propellerOnce()
                                ? propellerMembers(last)
                                : engine.causesOf(s.reading().line()))
                        .stream().filter(c -> !members.contains(c)).forEach(members::add);
            }
        }
        // A line with firing on it is strong on a sound machine too.
        boolean firing = shared.atMomentOf(most.get()).in(most.get().direction()).all().stream()
                .anyMatch(s -> s.reading().line().firing()
                        && names.contains(s.reading().line().name()));
        if (firing && engine.fires(1) && !members.contains(Cause.CRANK)) {
            members.add(Cause.CRANK);
        }
        boolean said = found.stream()
                .anyMatch(f ->
                        f.open() && members.contains(f.cause()) && f.sureness().confident());
        if (said || members.isEmpty() || names.size() < 2) {
            return Optional.empty();
        }
        OrderObservation s = most.get();
        EvidenceItem piece = EvidenceItem.running(
                STANDS_OUT - 1,
                s.ref(),
                FindingFact.LINES_SHARE,
                new Quoted(names.get(0)),
                Listed.quoted(names.subList(1, names.size())),
                Measure.FREQUENCY.of(s.reading().frequencyHz()),
                s.size(),
                s.where());
        return Optional.of(group(
                likeliestFirst(members, found),
                FindingFact.UNTOLD_SHARED,
                List.of(piece),
                FindingFact.TURN_PROPELLER_ON_FLANGE,
                Confidence.of(piece.points()).atMost(firing ? Confidence.MOST_IN_DOUBT : 1),
                new OrderObservations(List.of(s)).carriedOf(last.sightings())));
    }

    /** From which velocity on a line is blamed; never a line that a sound machine makes strong. */
    private static double floor(OrderObservation s, EngineFeatures engine) {
        if (s.reading().line().propellerOnce()) {
            return Thresholds.ONCE_MM_S;
        }
        return engine.causesOf(s.reading().line()).isEmpty() ? Double.MAX_VALUE : Thresholds.BLAMED_MM_S;
    }

    private static Optional<Finding> ofPropeller(Stage last, List<Finding> found) {
        PropellerOnceFeatures once = new PropellerOnceFeatures(last);
        Optional<EvidenceItem> large = once.large(STANDS_OUT);
        List<Cause> members = propellerMembers(last);
        // A resonance and a loose mount lift whatever there is, and are said first; what is nearly sure needs no
        // company.
        boolean said = found.stream()
                .filter(Finding::open)
                .anyMatch(f -> f.cause() == Cause.RESONANCE && f.sureness().share() >= Confidence.LEANING
                        || f.cause() == Cause.LOOSE_MOUNT && f.sureness().confident()
                        || OF_PROPELLER.contains(f.cause()) && f.sureness().share() >= Confidence.MOST_ONE_SIDED);
        boolean alone = members.size() == 1 && found.stream().anyMatch(f -> f.cause() == members.get(0));
        if (large.isEmpty() || said || alone || members.isEmpty()) {
            return Optional.empty();
        }
        List<EvidenceItem> pieces = new ArrayList<>(List.of(large.get()));
        last.disc().ifPresent(fit -> pieces.addAll(fit.items(fit.pullPoints() < 0 ? -1 : 1)));
        boolean more = once.tooMuch() || once.carried().isEmpty();
        return Optional.of(group(
                likeliestFirst(members, found),
                FindingFact.UNTOLD,
                pieces,
                nextForPropeller(last),
                Confidence.of(large.get().points()).atMost(more ? 1 : Confidence.MOST_IN_DOUBT),
                once.carried()));
    }

    /** What could shake at propeller 1×, less what was read and found fine; what the run looks more like comes first. */
    static List<Cause> propellerMembers(Stage last) {
        StaticFeatures still = new StaticFeatures(last);
        List<Cause> rocking = new ArrayList<>();
        if (!still.tracked() || still.trackOut() || still.trackMiddling()) {
            rocking.add(Cause.TRACK);
        }
        if (!still.pitchRead() || still.pitchOut() || still.pitchMiddling()) {
            rocking.add(Cause.PITCH);
        }
        if (!still.runOutRead() || still.runOutOut() || still.runOutMiddling()) {
            rocking.add(Cause.FLANGE);
        }
        List<Cause> members = new ArrayList<>(rocking);
        members.add(new PropellerOnceFeatures(last).rocks() ? rocking.size() : 0, Cause.MASS);
        return members;
    }

    private static FindingFact nextForPropeller(Stage last) {
        StaticFeatures still = new StaticFeatures(last);
        if (last.disc().isEmpty()) {
            return FindingFact.MEASURE_ALL;
        }
        if (!still.tracked() || !still.pitchRead() || !still.runOutRead()) {
            return FindingFact.READ_BEFORE_BALANCE;
        }
        return last.installation().sensor().place().isPresent() ? FindingFact.SECOND_PLACE : FindingFact.ENTER_PLACE;
    }

    private static Optional<Finding> ofCrank(Stage last, List<Finding> found) {
        List<Finding> family = found.stream()
                .filter(f -> f.open() && OF_CRANK.contains(f.cause()))
                .sorted(SUREST_FIRST)
                .toList();
        EngineFeatures engine = new EngineFeatures(last);
        if (family.isEmpty() || sure(found, OF_CRANK)) {
            return Optional.empty();
        }
        List<Cause> members =
                new ArrayList<>(family.stream().map(Finding::cause).toList());
        boolean cylinder = members.contains(Cause.WEAK_CYLINDER);
        if (cylinder && engine.alternateOrder().isEmpty() && !members.contains(Cause.CARBURETTORS)) {
            members.add(Cause.CARBURETTORS);
        }
        if (cylinder && engine.weakOrder() == 0.5 && !members.contains(Cause.LOOSE_MOUNT)) {
            members.add(Cause.LOOSE_MOUNT);
        }
        if (members.size() < 2) {
            return Optional.empty();
        }
        return Optional.of(group(
                likeliestFirst(members, found),
                FindingFact.UNTOLD_CRANK,
                family.get(0).speaksFor(),
                FindingFact.TELL_CRANK,
                family.get(0).sureness().atLeast(Confidence.MOST_ONE_SIDED),
                family.get(0).carried()));
    }

    /** Causes that have a finding of their own first, the surest of these before the others; the rest as they were. */
    private static List<Cause> likeliestFirst(List<Cause> members, List<Finding> found) {
        return Stream.concat(
                        found.stream()
                                .filter(Finding::open)
                                .sorted(SUREST_FIRST)
                                .map(Finding::cause)
                                .filter(members::contains),
                        members.stream())
                .distinct()
                .toList();
    }

    private static boolean sure(List<Finding> found, Set<Cause> of) {
        return found.stream()
                .anyMatch(
                        f -> f.open() && of.contains(f.cause()) && f.sureness().confident());
    }

    private static Finding group(
            List<Cause> members,
            FindingFact statement,
            List<EvidenceItem> pieces,
            FindingFact next,
            Confidence sureness,
            Optional<Carried> carried) {
        List<Value> names = members.stream().<Value>map(Fact::of).toList();
        return new Finding(
                Cause.UNTOLD,
                Fact.of(statement, new Listed(names)),
                pieces,
                List.of(),
                Fact.of(next),
                sureness,
                Optional.empty(),
                carried,
                members);
    }
}
