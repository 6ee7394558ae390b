package evenblade.bench;

import evenblade.machine.installation.OrderLine;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import evenblade.measure.orders.RunOrders;
import evenblade.measure.speed.Dwell;
import evenblade.rig.Axis;
import evenblade.rig.GroundRun;
import evenblade.rig.Machine;
import evenblade.rig.OtherMachine;
import evenblade.rig.Rig;
import evenblade.rig.Sampling;
import evenblade.rig.Sensor;
import evenblade.rig.Shaft;
import evenblade.rig.SpeedProgram;
import evenblade.rig.Truth;
import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;

/** A dwell beside a second engine of the same kind, and the same dwells without one: what is said, and does it hold? */
public final class SecondEngineBench {
    private final ConfirmationBench bench;

    SecondEngineBench(ConfirmationBench bench) {
        this.bench = bench;
    }

    /**
     * One run.
     *
     * @param confirmed whether anything was measured
     * @param errors of the speed, in standard errors
     * @param share by which it is off
     * @param lines detected
     * @param within of those, how many intervals hold the truth
     * @param words codes of the warnings
     */
    record Tried(String what, boolean confirmed, double errors, double share, int lines, int within, String words) {
        boolean told() {
            return words.contains("SECOND_ENGINE") || words.contains("LINES_BEAT");
        }

        /** Measured as if nobody else ran, at a speed or with amplitudes that aren't this engine's. */
        boolean wrongWithoutAWord() {
            return confirmed && !told() && (Math.abs(errors) > 3 || within < 0.7 * lines);
        }
    }

    /**
     * Runs of 30 s.
     *
     * @param beside whether a second engine runs, firing 0.1 to 2 Hz away, all its lines together 0.2 to 1 times as strong
     */
    List<Tried> runs(int from, int to, boolean beside) throws IOException {
        List<Tried> all = new ArrayList<>();
        for (int seed = from; seed < to; seed++) {
            Random random = new Random(seed);
            Machine machine = ConfirmationBench.GEARED.get(seed % ConfirmationBench.GEARED.size());
            double rpm =
                    machine.idleRpm() + (0.25 + 0.7 * random.nextDouble()) * (machine.maxRpm() - machine.idleRpm());
            double apartHz = 0.1 * Math.pow(20, random.nextDouble());
            double level = 0.2 * Math.pow(5, random.nextDouble());
            SpeedProgram program = SpeedProgram.still()
                    .hold(rpm, beside ? 30 : 8 + 22 * random.nextDouble())
                    .wandering(beside ? 0.001 : 0.0005 * Math.pow(20, random.nextDouble()), 4);
            if (!beside) {
                program = seed % 3 == 0 ? program.gusty(0.003) : seed % 3 == 1 ? program.unevenIdle(0.004) : program;
            }
            Rig rig = Rig.of(machine, 7000 + seed)
                    .program(program)
                    .sensors(seed % 2 == 0 ? Sensor.accelerometer("up", Axis.UP) : Sensor.microphone("up", 70))
                    .sampling(Sampling.even(2000));
            GroundRun run = (beside
                            ? rig.with(OtherMachine.secondEngine(machine, program, apartHz, level, 900 + seed))
                            : rig)
                    .make();
            all.add(tried(
                    String.format(
                            Locale.ROOT,
                            "seed %d, %.0f rpm, %.2f Hz = %.0f rpm apart, %.2f as strong",
                            seed,
                            rpm,
                            apartHz,
                            60 * apartHz / Math.max(1, machine.firingOrder()),
                            level),
                    run,
                    bench.answer(run, OptionalDouble.of(rpm))));
        }
        return all;
    }

    private static Tried tried(String what, GroundRun run, RunOrders got) {
        String words = ConfirmationBench.words(got);
        Truth.Dwell truth = run.truth().dwells().get(0);
        Optional<Dwell> found = got.speed().confirmed() ? got.speed().main() : Optional.empty();
        if (found.isEmpty() || got.speed().dwells().isEmpty()) {
            return new Tried(what, false, 0, 0, 0, 0, words);
        }
        Dwell dwell = found.get();
        double trueHz = run.truth().track().propellerRpm().mean(dwell.fromS(), dwell.toS()) / 60;
        int lines = 0;
        int within = 0;
        for (DwellOrders each : got.channels().get(0).dwells()) {
            for (OrderReading reading : each.readings()) {
                Optional<Truth.LineTruth> line =
                        truth.line("up", shaft(reading.line()), reading.line().order());
                if (each.dwell().equals(dwell)
                        && line.isPresent()
                        && reading.level() instanceof Level.Measured level
                        && level.detected()) {
                    double is = line.get().amplitudeAtFrequency()
                            / run.sensors().get(0).fullScale();
                    lines++;
                    within += is >= level.ciLow() && is <= level.ciHigh() ? 1 : 0;
                }
            }
        }
        return new Tried(
                what,
                true,
                (dwell.propellerHz() - trueHz) / dwell.standardErrorHz(),
                dwell.propellerHz() / trueHz - 1,
                lines,
                within,
                words);
    }

    private static Shaft shaft(OrderLine line) {
        return line.of() == evenblade.machine.installation.Shaft.PROPELLER ? Shaft.PROPELLER : Shaft.CRANK;
    }

    private static void print(String what, List<Tried> all) {
        all.forEach(each -> System.out.println("   " + (each.wrongWithoutAWord() ? "WRONG " : "") + each));
        List<Tried> measured = all.stream().filter(Tried::confirmed).toList();
        System.out.printf(
                Locale.ROOT,
                "== %s: %d runs, %d told, %d measured, of those speed within 2 standard errors %d, within 3 %d, lines %d, "
                        + "intervals that hold %d; wrong without a word %d%n",
                what,
                all.size(),
                all.stream().filter(Tried::told).count(),
                measured.size(),
                measured.stream().filter(each -> Math.abs(each.errors()) < 2).count(),
                measured.stream().filter(each -> Math.abs(each.errors()) < 3).count(),
                measured.stream().mapToInt(Tried::lines).sum(),
                measured.stream().mapToInt(Tried::within).sum(),
                all.stream().filter(Tried::wrongWithoutAWord).count());
    }

    /** {@code beside FROM TO} or {@code alone FROM TO}: seeds. */
    public static void main(String[] args) throws IOException {
        SecondEngineBench bench = new SecondEngineBench(new ConfirmationBench(Files.createTempDirectory("bench")));
        print(args[0], bench.runs(Integer.parseInt(args[1]), Integer.parseInt(args[2]), args[0].equals("beside")));
    }
}
