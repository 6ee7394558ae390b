package evenblade.bench;

import evenblade.machine.installation.OrderLine;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import evenblade.measure.orders.RunOrders;
import evenblade.rig.Axis;
import evenblade.rig.GroundRun;
import evenblade.rig.Machine;
import evenblade.rig.Rig;
import evenblade.rig.Sampling;
import evenblade.rig.Sensor;
import evenblade.rig.Shaft;
import evenblade.rig.SpeedProgram;
import evenblade.rig.Truth;
import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Random;

/** Lines of runs with a belt whose ratio wanders, made by the rig, each held against the truth. */
public final class CreepBench {
    /** Lines weaker than this share of the strongest of the run may be lost in its noise and are left out. */
    private static final double WORTH_A_LOOK = 0.1;

    private final ConfirmationBench bench;

    CreepBench(ConfirmationBench bench) {
        this.bench = bench;
    }

    /**
     * One line of one run.
     *
     * @param line what and in which run
     * @param ratio measured over true
     * @param within whether the interval, widened by 2 % for the rig's own definition of a size, holds the true one
     */
    record Tried(Shaft shaft, String line, boolean detected, double ratio, boolean within) {}

    List<Tried> run(int seed, double wander) throws IOException {
        Random random = new Random(seed);
        Machine machine = Machine.random(
                1000 + seed,
                seed % 2 == 0 ? Machine.Cycle.FOUR_STROKE : Machine.Cycle.TWO_STROKE,
                seed % 2 == 0 ? 4 : 2,
                seed % 4 < 2 ? Machine.Drive.BELT_TEETH : Machine.Drive.BELT_DECIMALS,
                2 + seed % 3);
        double rpm = machine.idleRpm() + (0.4 + 0.5 * random.nextDouble()) * (machine.maxRpm() - machine.idleRpm());
        GroundRun run = Rig.of(machine, 8000 + seed)
                .program(SpeedProgram.still().hold(rpm, 25).wandering(0.002 + 0.004 * random.nextDouble(), 4))
                .ratioWander(wander)
                .sensors(Sensor.accelerometer("up", Axis.UP))
                .sampling(Sampling.even(2000))
                .make();
        RunOrders got = bench.answer(run, OptionalDouble.of(rpm));
        List<Tried> all = new ArrayList<>();
        if (!got.speed().confirmed()) {
            return all;
        }
        Truth.Dwell dwell = run.truth().dwells().get(0);
        double scale = run.sensors().get(0).fullScale();
        double strongest = dwell.channels().get("up").stream()
                .mapToDouble(Truth.LineTruth::amplitudeAtFrequency)
                .max()
                .orElseThrow();
        DwellOrders measured = got.channels().get(0).dwells().get(0);
        for (OrderReading reading : measured.readings()) {
            OrderLine line = reading.line();
            if (line.role() == OrderLine.Role.MESH || !(reading.level() instanceof Level.Measured level)) {
                continue;
            }
            Shaft shaft = line.of() == evenblade.machine.installation.Shaft.PROPELLER ? Shaft.PROPELLER : Shaft.CRANK;
            double truth = dwell.line("up", shaft, line.order())
                    .map(Truth.LineTruth::amplitudeAtFrequency)
                    .orElse(0.0);
            if (truth > WORTH_A_LOOK * strongest && reading.inseparableFrom().isEmpty()) {
                all.add(new Tried(
                        shaft,
                        "seed " + seed + ", " + line.name(),
                        level.detected(),
                        scale * level.amplitude() / truth,
                        scale * level.ciLow() < 1.02 * truth && scale * level.ciHigh() > 0.98 * truth));
            }
        }
        if (!all.stream().allMatch(Tried::within)) {
            System.out.println("   " + ConfirmationBench.words(got));
            all.stream().filter(tried -> !tried.within()).forEach(tried -> System.out.println("   " + tried));
        }
        return all;
    }

    private static void print(Shaft shaft, double wander, List<Tried> all) {
        List<Double> ratios = new ArrayList<>();
        int within = 0;
        int detected = 0;
        for (Tried tried : all) {
            if (tried.shaft() == shaft) {
                ratios.add(tried.ratio());
                within += tried.within() ? 1 : 0;
                detected += tried.detected() ? 1 : 0;
            }
        }
        Collections.sort(ratios);
        System.out.printf(
                Locale.ROOT,
                "%.2f %% %s: %d lines, %d detected, %d within their intervals, measured over true %.3f, %.3f, %.3f (least, median, most)%n",
                100 * wander,
                shaft,
                ratios.size(),
                detected,
                within,
                ratios.get(0),
                ratios.get(ratios.size() / 2),
                ratios.get(ratios.size() - 1));
    }

    /** {@code FROM TO}: seeds. */
    public static void main(String[] args) throws IOException {
        CreepBench bench = new CreepBench(new ConfirmationBench(Files.createTempDirectory("bench")));
        for (double wander : new double[] {0, 0.00125, 0.0028, 0.005}) {
            List<Tried> all = new ArrayList<>();
            for (int seed = Integer.parseInt(args[0]); seed < Integer.parseInt(args[1]); seed++) {
                all.addAll(bench.run(seed, wander));
            }
            print(Shaft.PROPELLER, wander, all);
            print(Shaft.CRANK, wander, all);
        }
    }
}
