package evenblade.judge.findings;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Listed;
import evenblade.base.fact.Value;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

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

    private OneOfSeveral() {}

    static List<Finding> of(Stage last, List<Finding> found) {
        List<Finding> groups = new ArrayList<>();
        ofPropeller(last, found).ifPresent(groups::add);
        ofCrank(last, found).ifPresent(groups::add);
        return groups;
    }

    private static Optional<Finding> ofPropeller(Stage last, List<Finding> found) {
        PropellerOnceFeatures once = PropellerOnceFeatures.of(last);
        Optional<EvidenceItem> large = once.large(STANDS_OUT);
        List<Cause> members = propellerMembers(last);
        if (large.isEmpty() || sure(found, OF_PROPELLER) || members.isEmpty()) {
            return Optional.empty();
        }
        List<EvidenceItem> pieces = new ArrayList<>(List.of(large.get()));
        last.disc().ifPresent(fit -> pieces.addAll(fit.items(fit.pullPoints() < 0 ? -1 : 1)));
        boolean more = once.tooMuch() || once.carried().isEmpty();
        return Optional.of(group(
                members,
                FindingFact.UNTOLD,
                pieces,
                nextForPropeller(last),
                Confidence.of(large.get().points()).atMost(more ? 1 : Confidence.MOST_IN_DOUBT),
                once.carried()));
    }

    /** What could shake at propeller 1×, less what was read and found fine. */
    static List<Cause> propellerMembers(Stage last) {
        StaticFeatures still = StaticFeatures.of(last);
        int pull = last.disc().map(DiscFit::pullPoints).orElse(0);
        List<Cause> members = new ArrayList<>();
        if (pull > -3) {
            members.add(Cause.MASS);
        }
        if (pull < 3) {
            if (!still.tracked() || still.trackOut() || still.trackMiddling()) {
                members.add(Cause.TRACK);
            }
            if (!still.pitchRead() || still.pitchOut() || still.pitchMiddling()) {
                members.add(Cause.PITCH);
            }
            if (!still.runOutRead() || still.runOutOut() || still.runOutMiddling()) {
                members.add(Cause.FLANGE);
            }
        }
        return members;
    }

    private static FindingFact nextForPropeller(Stage last) {
        StaticFeatures still = StaticFeatures.of(last);
        if (last.disc().isEmpty()) {
            return FindingFact.MEASURE_ALL;
        }
        if (!still.tracked() || !still.pitchRead() || !still.runOutRead()) {
            return FindingFact.READ_BEFORE_BALANCE;
        }
        return last.installation().sensor().isPresent() ? FindingFact.SECOND_PLACE : FindingFact.ENTER_PLACE;
    }

    private static Optional<Finding> ofCrank(Stage last, List<Finding> found) {
        List<Finding> family = found.stream()
                .filter(f -> f.open() && OF_CRANK.contains(f.cause()))
                .toList();
        EngineFeatures engine = EngineFeatures.of(last);
        Optional<Finding> best =
                family.stream().max((a, b) -> Double.compare(a.sureness().share(), b.sureness().share()));
        if (best.isEmpty() || sure(found, OF_CRANK)) {
            return Optional.empty();
        }
        List<Cause> members = new ArrayList<>(family.stream().map(Finding::cause).toList());
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
                members,
                FindingFact.UNTOLD_CRANK,
                best.get().speaksFor(),
                FindingFact.TELL_CRANK,
                best.get().sureness().atLeast(Confidence.MOST_ONE_SIDED),
                best.get().carried()));
    }

    private static boolean sure(List<Finding> found, Set<Cause> of) {
        return found.stream()
                .anyMatch(f -> f.open() && of.contains(f.cause()) && f.sureness().confident());
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
