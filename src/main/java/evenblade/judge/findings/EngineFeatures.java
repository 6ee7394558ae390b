package evenblade.judge.findings;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Value.Quoted;
import evenblade.judge.findings.RunEvidence.Direction;
import evenblade.machine.installation.Engine;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.OrderLine.Role;
import evenblade.machine.installation.OrderTable;
import evenblade.machine.installation.Shaft;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What crank and cylinders do in a stage; shared by the engine's rules. */
final class EngineFeatures {
    private final Engine engine;
    private final OrderObservations all;
    private final OrderObservations firing;

    EngineFeatures(Stage stage) {
        engine = stage.installation().engine();
        all = stage.sightings();
        firing = all.only(s ->
                s.reading().line().role() == Role.FIRING && s.reading().line().order() == engine.firingOrder());
    }

    /** Crank order as seen alone. */
    OrderObservations crank(double order) {
        return all.of(Shaft.CRANK, order).alone();
    }

    /** The lowest order that cylinders alike don't make: ½ of a four-stroke, 1 of a two-stroke. */
    double weakOrder() {
        return engine.cycle() == Engine.Cycle.FOUR_STROKE ? 0.5 : 1;
    }

    /** Whether a crank order is one of firing's own. */
    boolean fires(double order) {
        double firingOrder = engine.firingOrder();
        // Orders are halves and wholes: only the rounding of doubles is between.
        return firingOrder > 0 && Math.abs(order / firingOrder - Math.rint(order / firingOrder)) < 1e-9;
    }

    /** Half the firing order: what firings that are strong and weak by turns make; empty where they can't be by turns. */
    OptionalDouble alternateOrder() {
        boolean byTurns = engine.cylinders() >= 4 && engine.cylinders() % 2 == 0;
        return byTurns ? OptionalDouble.of(engine.firingOrder() / 2) : OptionalDouble.empty();
    }

    /** Orders in the table that only cylinders which differ make, lowest first, and not those of firing by turns. */
    List<Double> cylinderOrders() {
        double step = weakOrder();
        double highest = Math.max(4, 2 * engine.firingOrder());
        List<Double> orders = new ArrayList<>();
        // A hair for the rounding of doubles.
        for (double m = step; m <= highest + 1e-9; m += step) {
            double turns = alternateOrder().isPresent() ? m / alternateOrder().getAsDouble() : 0.5;
            // As above.
            if (!fires(m) && Math.abs(turns - Math.rint(turns)) > 1e-9) {
                orders.add(m);
            }
        }
        return orders;
    }

    /** The least of a crank order over firing in any dwell: a resonance lifts it at one speed, a cylinder at all. */
    double leastOverFiring(double order) {
        return crank(order).leastOver(firing);
    }

    /** Orders of {@link #cylinderOrders} that nothing else makes: crank 1× is for masses too, 2× for pistons. */
    List<Double> pureCylinderOrders() {
        return cylinderOrders().stream().filter(m -> m != 1 && m != 2).toList();
    }

    /** How alike a crank order shakes to firing. */
    OptionalDouble likeFiring(double order) {
        return crank(order).likeness(firingShape());
    }

    /** Peak velocity of a crank order, and of all with it; empty where the scale isn't known. */
    Optional<Carried> carried(double order) {
        return crank(order).carriedOf(all);
    }

    /** Whether a crank order shakes enough to be blamed; so it is where the scale isn't known. */
    boolean worthBlaming(double order) {
        return carried(order).map(c -> c.mmS() >= Thresholds.BLAMED_MM_S).orElse(true);
    }

    /** Half orders of {@link #cylinderOrders} that stand out beside firing. */
    private List<Double> halves() {
        return cylinderOrders().stream()
                // Halves, not wholes; orders come in steps of a half.
                .filter(m -> Math.abs(m - Math.rint(m)) > 0.1)
                .filter(m -> overFiring(m).orElse(0) > Thresholds.HALF_OVER_FIRING)
                .toList();
    }

    /** Crank orders of which only a knock once in two turns makes a row: halves that don't shake as firing does. */
    List<Double> strangeHalves() {
        return halves().stream()
                .filter(this::worthBlaming)
                .filter(m -> likeFiring(m).orElse(1) < Thresholds.UNLIKE_FIRING)
                .toList();
    }

    /** The half order that carries most of those that stand out; empty where none does. */
    Optional<Double> largestHalf() {
        return halves().stream()
                .max(Comparator.comparingDouble(
                        m -> carried(m).map(Carried::mmS).orElse(0.0)));
    }

    /**
     * How alike the half orders that stand out shake to firing, the median of them: one at a resonance of the mounts is out of
     * shape by itself. Empty where fewer than two stand out, none is worth blaming, or firing shares its frequency with another line.
     */
    OptionalDouble halvesLikeFiring() {
        List<Double> halves = halves();
        double[] likeness = halves.stream()
                .map(this::likeFiring)
                .flatMapToDouble(OptionalDouble::stream)
                .sorted()
                .toArray();
        int n = likeness.length;
        boolean told = n > 1
                && halves.stream().anyMatch(this::worthBlaming)
                && !firing.alone().isEmpty();
        return told ? OptionalDouble.of((likeness[(n - 1) / 2] + likeness[n / 2]) / 2) : OptionalDouble.empty();
    }

    /** Whether the half orders shake otherwise than cylinders would make them, by as little as it may be. */
    boolean halvesUnlikeFiring() {
        return halvesLikeFiring().orElse(1) < Thresholds.LIKE_FIRING;
    }

    /**
     * Whether firing shakes the sensor upright more than across. Gas torque rolls the engine about its crank; where that lifts
     * the sensor more than it swings it, a push at one mount, which lifts and rolls, has the same shape.
     */
    boolean firingLifts() {
        OrderObservations up = firingShape().in(Direction.UP);
        OrderObservations across = firingShape().in(Direction.ACROSS);
        return !up.isEmpty() && !across.isEmpty() && up.largest() > across.largest();
    }

    /** Firing where it has its frequency to itself, if it has anywhere. */
    private OrderObservations firingShape() {
        return firing.alone().isEmpty() ? firing : firing.alone();
    }

    /** What raises a crank line that firing doesn't make; none for another line. */
    List<Cause> causesOf(OrderLine line) {
        List<Cause> causes = new ArrayList<>();
        if (line.of() != Shaft.CRANK || line.role() == Role.MESH || fires(line.order())) {
            return causes;
        }
        double order = line.order();
        if (order == 1) {
            causes.add(Cause.CRANK);
        }
        if (severalCylinders() && order == alternateOrder().orElse(weakOrder())) {
            causes.add(Cause.CARBURETTORS);
        }
        if (severalCylinders() && order == weakOrder()) {
            causes.add(Cause.WEAK_CYLINDER);
        }
        if (order != Math.rint(order)) {
            causes.add(Cause.LOOSE_MOUNT);
        }
        return causes;
    }

    /** What the amplitudes are held against; says so where another line lies on it. */
    Fact firingName() {
        return Fact.of(firing.alone().isEmpty() && !firing.isEmpty() ? FindingFact.FIRING_SHARED : FindingFact.FIRING);
    }

    /** An order as it is written: ½×, 1×, 1½×. */
    static Quoted order(double order) {
        return new Quoted(OrderTable.orderText(order));
    }

    /** Whether firing has lines below it that uneven cylinders would raise. */
    boolean severalCylinders() {
        return engine.cycle() != Engine.Cycle.ELECTRIC && engine.cylinders() > 1;
    }

    /** A crank order over firing, all directions together; empty where it can't be told or doesn't stand out. */
    OptionalDouble overFiring(double order) {
        OrderObservations line = crank(order);
        return line.detected().isEmpty() ? OptionalDouble.empty() : line.over(firing);
    }
}
