package evenblade.keep.practice;

import evenblade.base.units.Length;
import evenblade.machine.installation.Engine;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.Reduction;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Invented installations for the tests of this room. */
final class Installations {
    private Installations() {}

    /** Four-stroke four, 51/21 gear, three blades, 1.70 m. */
    static Installation gearedThreeBlade() {
        return geared(Engine.Cycle.FOUR_STROKE, 4, 3);
    }

    static Installation geared(Engine.Cycle cycle, int cylinders, int blades) {
        Reduction.Teeth teeth = new Reduction.Teeth(21, 51);
        return of(cycle, cylinders, new Reduction(Reduction.Kind.GEAR, teeth.ratio(), Optional.of(teeth)), blades);
    }

    static Installation direct(Engine.Cycle cycle, int cylinders, int blades) {
        return of(cycle, cylinders, new Reduction(Reduction.Kind.DIRECT, 1, Optional.empty()), blades);
    }

    private static Installation of(Engine.Cycle cycle, int cylinders, Reduction reduction, int blades) {
        return new Installation(
                Optional.of("invented"),
                new Engine(cycle, cylinders, OptionalDouble.empty(), OptionalDouble.empty()),
                reduction,
                new Installation.Propeller(blades, Optional.of(Length.ofMetres(1.7)), Optional.empty()),
                List.of());
    }

    /** The machine with every blade and cylinder alike and nothing out of true. */
    static Machine even(Installation installation) {
        Machine machine = Machine.healthy(installation, 1);
        List<Blade> blades = machine.blades().stream()
                .map(blade -> new Blade(blade.name(), 1.2, 0.34, 0, 0))
                .toList();
        List<Double> cylinders =
                machine.drive().cylinderStrength().stream().map(c -> 1.0).toList();
        return machine.withBlades(blades)
                .withRunOut(new InventedRunOut(0, 0.05, 0))
                .withDrive(machine.drive().withCylinders(cylinders));
    }
}
