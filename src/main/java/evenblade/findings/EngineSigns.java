package evenblade.findings;

import evenblade.installation.Engine;
import evenblade.installation.OrderLine.Role;
import evenblade.installation.Shaft;
import java.util.OptionalDouble;

/** What crank and cylinders do in a stage; shared by the engine's rules. */
final class EngineSigns {
    private final Engine engine;
    private final Sightings all;
    private final Sightings firing;

    private EngineSigns(Stage stage) {
        engine = stage.installation().engine();
        all = stage.sightings();
        firing = all.only(s ->
                s.reading().line().role() == Role.FIRING && s.reading().line().order() == engine.firingOrder());
    }

    static EngineSigns of(Stage stage) {
        return new EngineSigns(stage);
    }

    /** Crank order as seen alone. */
    Sightings crank(double order) {
        return all.of(Shaft.CRANK, order).alone();
    }

    /** The lowest order that cylinders alike don't make: ½ of a four-stroke, 1 of a two-stroke. */
    double weakOrder() {
        return engine.cycle() == Engine.Cycle.FOUR_STROKE ? 0.5 : 1;
    }

    /** What the amplitudes are held against; says so where another line lies on it. */
    String firingName() {
        return firing.alone().isEmpty() && !firing.isEmpty() ? "firing (with what shares its frequency)" : "firing";
    }

    /** Whether firing has lines below it that uneven cylinders would raise. */
    boolean severalCylinders() {
        return engine.cycle() != Engine.Cycle.ELECTRIC && engine.cylinders() > 1;
    }

    /** A crank order over firing, all directions together; empty where it can't be told or doesn't stand out. */
    OptionalDouble overFiring(double order) {
        Sightings line = crank(order);
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
