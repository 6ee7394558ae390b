package evenblade.judge.findings;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Quoted;
import evenblade.machine.installation.Engine;
import evenblade.machine.installation.OrderLine.Role;
import evenblade.machine.installation.OrderTable;
import evenblade.machine.installation.Shaft;
import java.util.OptionalDouble;

/** What crank and cylinders do in a stage; shared by the engine's rules. */
final class EngineFeatures {
    private final Engine engine;
    private final OrderObservations all;
    private final OrderObservations firing;

    private EngineFeatures(Stage stage) {
        engine = stage.installation().engine();
        all = stage.sightings();
        firing = all.only(s ->
                s.reading().line().role() == Role.FIRING && s.reading().line().order() == engine.firingOrder());
    }

    static EngineFeatures of(Stage stage) {
        return new EngineFeatures(stage);
    }

    /** Crank order as seen alone. */
    OrderObservations crank(double order) {
        return all.of(Shaft.CRANK, order).alone();
    }

    /** The lowest order that cylinders alike don't make: ½ of a four-stroke, 1 of a two-stroke. */
    double weakOrder() {
        return engine.cycle() == Engine.Cycle.FOUR_STROKE ? 0.5 : 1;
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

    /**
     * Upright over level of a crank order, over the same ratio of firing: about 1 where gas torque makes both; far from
     * it where crank mass pulls in both directions alike.
     */
    OptionalDouble uprightOfCrankAgainstFiring() {
        OptionalDouble crankRatio = crank(1).in(Direction.UP).over(crank(1).in(Direction.ACROSS));
        OptionalDouble firingRatio = firing.in(Direction.UP).over(firing.in(Direction.ACROSS));
        return crankRatio.isPresent() && firingRatio.isPresent() && firingRatio.getAsDouble() > 0
                ? OptionalDouble.of(crankRatio.getAsDouble() / firingRatio.getAsDouble())
                : OptionalDouble.empty();
    }
}
