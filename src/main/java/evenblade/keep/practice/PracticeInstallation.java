package evenblade.keep.practice;

import evenblade.base.units.Length;
import evenblade.base.units.Mass;
import evenblade.machine.installation.Engine;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.Limit;
import evenblade.machine.installation.Reduction;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The aircraft that practice takes place on; there is none like it. */
public final class PracticeInstallation {
    private PracticeInstallation() {}

    /** A four-stroke four with 21/51 teeth and three blades of 0.85 m. */
    public static Installation geared() {
        Reduction.Teeth teeth = new Reduction.Teeth(21, 51);
        return new Installation(
                Optional.of("Invented: two-seater 'Brindlequill', geared four, three blades"),
                new Engine(Engine.Cycle.FOUR_STROKE, 4, OptionalDouble.of(1600), OptionalDouble.of(5600)),
                new Reduction(Reduction.Kind.GEAR, teeth.ratio(), Optional.of(teeth)),
                new Installation.Propeller(
                        3,
                        Optional.of(Length.ofMetres(1.7)),
                        Optional.empty(),
                        Optional.of(new Mass(1.2)),
                        Optional.of(Length.ofMetres(0.34))),
                List.of(new Limit(
                        Limit.Subject.TRACK,
                        Limit.Statistic.SPREAD,
                        Length.ofMillimetres(3),
                        "invented maker's sheet")));
    }
}
