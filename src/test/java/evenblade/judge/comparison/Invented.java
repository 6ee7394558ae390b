package evenblade.judge.comparison;

import evenblade.base.fact.Fact;
import evenblade.base.units.FullScale;
import evenblade.base.units.SignalUnit;
import evenblade.machine.installation.Engine;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.OrderTable;
import evenblade.machine.installation.Reduction;
import evenblade.machine.installation.Shaft;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedDoubt;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Invented runs for the tests of this room: a run is what its lines are said to be. */
final class Invented {
    static final Installation INSTALLATION = new Installation(
            Optional.of("invented"),
            new Engine(Engine.Cycle.FOUR_STROKE, 4, OptionalDouble.empty(), OptionalDouble.empty()),
            new Reduction(Reduction.Kind.UNSTATED, 2.43, Optional.empty()),
            new Installation.Propeller(3, Optional.empty(), Optional.empty()),
            List.of());
    static final OrderTable TABLE = INSTALLATION.orders();
    static final double RATIO = 2.43;
    /** Within-run error of every detected line, as a share of it. */
    static final double ERROR_SHARE = 0.005;
    /** Upper end of what noise could hide in a line that isn't detected. */
    static final double NOISE = 0.02;

    private Invented() {}

    /** Noted as usual for an accelerometer. */
    static RunConditions gearbox() {
        return new RunConditions(
                Optional.of("accelerometer A"),
                Optional.of("gearbox top"),
                Optional.of("across"),
                Optional.of("fixed"),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                false);
    }

    /** Noted as usual, and that nothing was changed since the run before. */
    static RunConditions nothingChanged() {
        return new RunConditions(
                gearbox().sensor(),
                gearbox().place(),
                gearbox().direction(),
                gearbox().gain(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                true);
    }

    static RunConditions with(
            String sensor, String place, String direction, String gain, Optional<FullScale> fullScale) {
        return new RunConditions(
                Optional.ofNullable(sensor),
                Optional.ofNullable(place),
                Optional.ofNullable(direction),
                Optional.ofNullable(gain),
                Optional.empty(),
                fullScale,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                false);
    }

    /** A run of one channel in m/s². */
    static MeasuredRun run(String name, DwellOrders... dwells) {
        return run(name, gearbox(), channel("x", SignalUnit.METRE_PER_SECOND_SQUARED, dwells));
    }

    static MeasuredRun run(String name, RunConditions conditions, ChannelOrders... channels) {
        return new MeasuredRun(name, conditions, Optional.empty(), Optional.empty(), 3, RATIO, List.of(channels));
    }

    static MeasuredRun lossy(MeasuredRun run) {
        return lossy(run, "mp3-128k");
    }

    static MeasuredRun lossy(MeasuredRun run, String coding) {
        return new MeasuredRun(
                run.name(),
                run.conditions(),
                Optional.of(coding),
                run.speedDoubt(),
                run.blades(),
                run.ratio(),
                run.channels());
    }

    static MeasuredRun doubted(MeasuredRun run) {
        return new MeasuredRun(
                run.name(),
                run.conditions(),
                run.lossyCoding(),
                Optional.of(Fact.of(SpeedDoubt.NOTHING_STANDS)),
                run.blades(),
                run.ratio(),
                run.channels());
    }

    static ChannelOrders channel(String name, SignalUnit unit, DwellOrders... dwells) {
        return new ChannelOrders(name, unit, List.of(dwells));
    }

    /** A dwell with propeller 1× and blade pass. */
    static DwellOrders dwell(double engineRpm, double once, double bladePass) {
        return dwell(engineRpm, Map.of(1.0, once, 3.0, bladePass), Map.of());
    }

    /** A dwell with the given propeller and crank orders; all others are hidden by noise. */
    static DwellOrders dwell(double engineRpm, Map<Double, Double> propeller, Map<Double, Double> crank) {
        double hz = engineRpm / 60 / RATIO;
        List<OrderReading> readings = new ArrayList<>();
        double uneven = 0;
        double even = 0;
        for (OrderLine line : TABLE.lines()) {
            Map<Double, Double> said = line.of() == Shaft.PROPELLER ? propeller : crank;
            double amplitude = said.getOrDefault(line.order(), 0.0);
            readings.add(new OrderReading(line, line.propellerOrder() * hz, level(amplitude), List.of()));
            if (line.of() == Shaft.PROPELLER) {
                if (line.role() == OrderLine.Role.BLADE_PASS) {
                    even += amplitude * amplitude;
                } else {
                    uneven += amplitude * amplitude;
                }
            }
        }
        double index = Math.sqrt(uneven / even);
        Optional<DwellOrders.Unevenness> unevenness = even > 0 && uneven > 0
                ? Optional.of(new DwellOrders.Unevenness(index, index * Math.exp(-0.01), index * Math.exp(0.01)))
                : Optional.empty();
        return new DwellOrders(
                new Dwell(engineRpm / 100, engineRpm / 100 + 20, hz, 0, hz, hz), readings, List.of(), unevenness);
    }

    static Level level(double amplitude) {
        if (amplitude == 0) {
            return new Level.Measured(0, NOISE / 2, 0, NOISE, OptionalDouble.empty(), false, Level.Estimator.COHERENT);
        }
        double error = ERROR_SHARE * amplitude;
        return new Level.Measured(
                amplitude,
                error,
                amplitude - 2 * error,
                amplitude + 2 * error,
                OptionalDouble.empty(),
                true,
                Level.Estimator.COHERENT);
    }

    /** The same dwell with every amplitude at another scale. */
    static DwellOrders scaled(DwellOrders dwell, double factor) {
        return new DwellOrders(
                dwell.dwell(),
                dwell.readings().stream()
                        .map(r -> new OrderReading(
                                r.line(), r.frequencyHz(), scaled(r.level(), factor), r.inseparableFrom()))
                        .toList(),
                List.of(),
                dwell.unevenness());
    }

    private static Level scaled(Level level, double factor) {
        Level.Measured m = (Level.Measured) level;
        return new Level.Measured(
                m.amplitude() * factor,
                m.standardError() * factor,
                m.ciLow() * factor,
                m.ciHigh() * factor,
                m.phaseDeg(),
                m.detected(),
                m.estimator());
    }

    /** The change of propeller 1× at the first pair of dwells of the first channel. */
    static Change once(RunComparison comparison) {
        return change(comparison, "propeller 1×");
    }

    static Change change(RunComparison comparison, String name) {
        return comparison.channels().get(0).dwells().get(0).changes().stream()
                .filter(c -> c.figure().name().equals(name))
                .findFirst()
                .orElseThrow();
    }
}
