package evenblade.measure.speed;

import evenblade.machine.installation.Engine;
import evenblade.machine.installation.Engine.Cycle;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.OrderTable;
import evenblade.machine.installation.Reduction;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;

/** Invented machines for trials: ratios from 1 to 4, two to eleven blades, three kinds of engine. */
record Machine(String name, Cycle cycle, int cylinders, double ratio, int blades, double idleRpm, double maxRpm) {
    static final List<Machine> ALL = List.of(
            new Machine("three blades, 2.43, four-stroke four", Cycle.FOUR_STROKE, 4, 2.43, 3, 1600, 5800),
            new Machine("two blades, direct, four-stroke four", Cycle.FOUR_STROKE, 4, 1.0, 2, 700, 2700),
            new Machine("three blades, 3.0, two-stroke twin", Cycle.TWO_STROKE, 2, 3.0, 3, 2000, 6800),
            new Machine("two blades, 2.58, two-stroke twin", Cycle.TWO_STROKE, 2, 2.58, 2, 2000, 6500),
            new Machine("six blades, 4.0, two-stroke single", Cycle.TWO_STROKE, 1, 4.0, 6, 2500, 8000),
            new Machine("five blades, direct, electric", Cycle.ELECTRIC, 0, 1.0, 5, 600, 3000),
            new Machine("eleven blades, direct, electric", Cycle.ELECTRIC, 0, 1.0, 11, 600, 3000),
            new Machine("four blades, 1.76, four-stroke six", Cycle.FOUR_STROKE, 6, 1.76, 4, 900, 4200),
            new Machine("three blades, 51/21, four-stroke three", Cycle.FOUR_STROKE, 3, 51.0 / 21, 3, 1500, 5500));

    OrderTable table() {
        return installation().orders();
    }

    Installation installation() {
        return new Installation(
                Optional.of(name),
                new Engine(cycle, cylinders, OptionalDouble.of(idleRpm), OptionalDouble.of(maxRpm)),
                new Reduction(Reduction.Kind.UNSTATED, ratio, Optional.empty()),
                new Installation.Propeller(blades, Optional.empty(), Optional.empty()),
                List.of());
    }

    /** Lines with amplitudes such as ground runs show: blade pass, firing, 1× and crank strong, others weak. */
    List<evenblade.keep.practice.Line> lines(Random random) {
        List<evenblade.keep.practice.Line> lines = new ArrayList<>();
        List<Double> taken = new ArrayList<>();
        for (OrderLine line : table().lines()) {
            if (taken.stream().anyMatch(o -> Math.abs(o - line.propellerOrder()) < 1e-6)) {
                continue;
            }
            taken.add(line.propellerOrder());
            double usual =
                    switch (line.role()) {
                        case BLADE_PASS, FIRING -> 1.0 / Math.max(1, line.order() / 4);
                        case UNEVEN_PROPELLER -> line.order() == 1 ? 0.6 : 0.1;
                        case CRANK -> 0.4;
                        case HALF_CRANK -> 0.08;
                        case MESH -> 0;
                    };
            double amplitude = usual * Math.exp(0.6 * random.nextGaussian());
            lines.add(evenblade.keep.practice.Line.of(line.propellerOrder(), amplitude, 360 * random.nextDouble()));
        }
        return lines;
    }
}
