package evenblade.judge.findings;

import static evenblade.judge.findings.EvidenceItem.running;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Value.Count;
import evenblade.base.fact.Value.Quoted;
import evenblade.machine.installation.OrderLine.Role;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.DwellOrders.UnexplainedLine;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** A worn pair of gears swells once per turn: lines beside gear mesh, a whole number of propeller or crank turns off. */
final class DriveRule implements Rule {
    private static final int FARTHEST_SIDE = 3; // sidebands further out are too small; ours
    /** Propeller orders within which a line counts as lying at a whole number of turns. */
    private static final double SHARP = 0.05;

    private static final double SMEARED = 0.35; // of an order: two lines nearer may be one; ours

    /** A mesh that kept more than this of its loudness counts as unchanged. */
    private static final double LOUD_AS_BEFORE = 0.5;

    @Override
    public Cause cause() {
        return Cause.DRIVE;
    }

    @Override
    public Optional<Assessment> weigh(Stage stage) {
        OrderObservations mesh = stage.sightings().of(Role.MESH).detected();
        List<Side> sides = sides(stage, mesh);
        if (sides.isEmpty()) {
            return Optional.empty();
        }
        Side most = sides.stream().max(Comparator.comparingDouble(Side::share)).orElseThrow();
        OrderObservation loudest = mesh.strongest().orElseThrow();
        List<EvidenceItem> pieces = new ArrayList<>();
        pieces.add(running(
                4,
                most.mesh().ref(EvidenceRef.Side.SPECTRUM),
                most.ofCrank() ? FindingFact.LINES_BESIDE_CRANK : FindingFact.LINES_BESIDE,
                new Quoted(most.mesh().reading().line().name()),
                most.mesh().size(),
                new Count(most.turns()),
                Measure.SHARE.of(most.share()),
                most.mesh().where()));
        if (sides.size() > 2) {
            pieces.add(running(2, stage.ref(), FindingFact.SEEN_TIMES, new Count(sides.size()), stage.names()));
        }
        return Optional.of(new Assessment(
                Fact.of(FindingFact.POINTS_TO_DRIVE),
                pieces,
                false,
                loudest.amplitude(),
                Fact.of(FindingFact.LOOK_AT_TEETH)));
    }

    /** Lines beside the mesh are lost in a wandering speed before the mesh is: while it is as loud, nothing is put right. */
    @Override
    public boolean mayPersist(Stage stage, double symptom) {
        return stage.sightings()
                .of(Role.MESH)
                .detected()
                .strongest()
                .map(mesh -> mesh.amplitude() > LOUD_AS_BEFORE * symptom)
                .orElse(false);
    }

    private record Side(OrderObservation mesh, boolean ofCrank, int turns, double share) {}

    /**
     * Lines beside the mesh: one sharp line that is strong enough by itself, or one on both sides. Speed that wanders
     * smears a line this high over many; what lies around a whole number of turns is taken together then.
     */
    private static List<Side> sides(Stage stage, OrderObservations mesh) {
        List<Side> sides = new ArrayList<>();
        for (OrderObservation line : mesh.all()) {
            List<UnexplainedLine> others = unexplained(stage, line);
            for (boolean ofCrank : new boolean[] {false, true}) {
                double turn = ofCrank ? stage.installation().reduction().ratio() : 1;
                for (int turns = 1; turns <= FARTHEST_SIDE; turns++) {
                    double off = turns * turn;
                    double sharp = Math.max(together(others, line, off, SHARP), together(others, line, -off, SHARP));
                    double smeared =
                            Math.min(together(others, line, off, SMEARED), together(others, line, -off, SMEARED));
                    double share = Math.max(sharp, smeared) / line.amplitude();
                    if (share > Thresholds.SIDE_OVER_MESH
                            || smeared > Thresholds.BOTH_SIDES_OVER_MESH * line.amplitude()) {
                        sides.add(new Side(line, ofCrank, turns, share));
                    }
                }
            }
        }
        return sides;
    }

    /** Amplitude of all that lies so many propeller turns off the mesh, as root of the sum of squares. */
    private static double together(List<UnexplainedLine> others, OrderObservation mesh, double off, double within) {
        double at = mesh.reading().line().propellerOrder() + off;
        return Math.sqrt(others.stream()
                .filter(other -> Math.abs(other.propellerOrder() - at) < within)
                .mapToDouble(other -> other.amplitude() * other.amplitude())
                .sum());
    }

    private static List<UnexplainedLine> unexplained(Stage stage, OrderObservation line) {
        return stage.runs().stream()
                .filter(run -> run.ref().equals(line.run()))
                .flatMap(run -> run.numbers().channels().stream())
                .filter(channel -> channel.channel().equals(line.channel()))
                .map(channel -> channel.dwells().get(line.dwell()))
                .map(DwellOrders::unexplained)
                .flatMap(List::stream)
                .toList();
    }
}
