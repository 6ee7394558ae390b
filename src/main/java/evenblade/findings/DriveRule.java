package evenblade.findings;

import static evenblade.findings.OnceSigns.text;
import static evenblade.findings.Piece.running;

import evenblade.installation.OrderLine.Role;
import evenblade.orders.DwellOrders;
import evenblade.orders.UnexplainedLine;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** A worn pair of gears swells once per turn: lines beside gear mesh, a whole number of propeller or crank turns off. */
final class DriveRule implements Rule {
    private static final int FARTHEST_SIDE = 3;

    @Override
    public Cause cause() {
        return Cause.DRIVE;
    }

    @Override
    public Optional<Assessment> weigh(Stage stage) {
        Sightings mesh = stage.sightings().of(Role.MESH).detected();
        List<Side> sides = sides(stage, mesh);
        if (sides.isEmpty()) {
            return Optional.empty();
        }
        Side most = sides.stream().max(Comparator.comparingDouble(Side::share)).orElseThrow();
        Sighting loudest = mesh.strongest().orElseThrow();
        List<Piece> pieces = new ArrayList<>();
        pieces.add(running(
                4,
                text(
                        "%s of %s has lines beside it, %.0f propeller turn(s) off with %.0f %% of it, %s",
                        most.mesh().reading().line().name(),
                        most.mesh().size(),
                        most.off(),
                        100 * most.share(),
                        most.mesh().where())));
        if (sides.size() > 2) {
            pieces.add(running(2, text("%d such lines over dwells and channels of %s", sides.size(), stage.names())));
        }
        return Optional.of(
                new Assessment(
                        "Gear mesh or belt with lines beside it points to the reduction drive.",
                        pieces,
                        false,
                        loudest.amplitude(),
                        "Look at tooth contact, backlash or belt tension and drain the oil over a magnet; then repeat the run."));
    }

    private record Side(Sighting mesh, double off, double share) {}

    private static List<Side> sides(Stage stage, Sightings mesh) {
        List<Side> sides = new ArrayList<>();
        for (Sighting line : mesh.all()) {
            for (UnexplainedLine other : unexplained(stage, line)) {
                double off = other.propellerOrder() - line.reading().line().propellerOrder();
                double whole = Math.rint(off);
                boolean beside = whole != 0
                        && Math.abs(whole) <= FARTHEST_SIDE
                        && Math.abs(off - whole) < 0.05
                        && other.amplitude() > Yardsticks.SIDE_OVER_MESH * line.amplitude();
                if (beside) {
                    sides.add(new Side(line, Math.abs(whole), other.amplitude() / line.amplitude()));
                }
            }
        }
        return sides;
    }

    private static List<UnexplainedLine> unexplained(Stage stage, Sighting line) {
        return stage.runs().stream()
                .filter(run -> run.name().equals(line.run()))
                .flatMap(run -> run.numbers().channels().stream())
                .filter(channel -> channel.channel().equals(line.channel()))
                .map(channel -> channel.dwells().get(line.dwell()))
                .map(DwellOrders::unexplained)
                .flatMap(List::stream)
                .toList();
    }
}
