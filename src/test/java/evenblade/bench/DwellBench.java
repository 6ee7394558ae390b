package evenblade.bench;

import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import evenblade.measure.orders.RunOrders;
import evenblade.measure.speed.Dwell;
import evenblade.rig.Axis;
import evenblade.rig.GroundRun;
import evenblade.rig.Machine;
import evenblade.rig.Rig;
import evenblade.rig.Sampling;
import evenblade.rig.Sensor;
import evenblade.rig.Shaft;
import evenblade.rig.Sound;
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

/**
 * Dwells of runs made by the rig after steps of the throttle in mains hum, each held against the truth.
 */
public final class DwellBench {
    private final ConfirmationBench bench;

    DwellBench(ConfirmationBench bench) {
        this.bench = bench;
    }

    /**
     * One true dwell.
     *
     * @param confirmed whether a dwell was found where it is
     * @param errors of the speed, in standard errors
     * @param share by which the speed is off
     * @param bladePass as measured over what is true; 0 where it wasn't measured
     * @param reach half its stated interval, as a share of it
     * @param words codes of the warnings
     */
    record Tried(
            String what, boolean confirmed, double errors, double share, double bladePass, double reach, String words) {
        /** A whole turn more or less in a dwell of 12 s is 0.2 to 0.4 %; nothing else comes near. */
        boolean slipped() {
            return confirmed && Math.abs(share) > 0.0005;
        }

        boolean bladePassWrong() {
            return confirmed && bladePass > 0 && Math.abs(bladePass - 1) > 2 * reach + 0.02;
        }
    }

    /**
     * Five dwells of 12 s between steps of the throttle.
     *
     * @param hum of 50 or 60 Hz, over all lines together (root mean squares)
     * @param belts whether drives whose ratio wanders are among them
     */
    List<Tried> steps(int from, int to, double hum, boolean belts) throws IOException {
        List<Tried> all = new ArrayList<>();
        for (int seed = from; seed < to; seed++) {
            Random random = new Random(seed);
            Machine machine = ConfirmationBench.GEARED.get(seed % ConfirmationBench.GEARED.size());
            if (machine.drive().name().startsWith("BELT") && !belts) {
                continue;
            }
            SpeedProgram program = SpeedProgram.still();
            for (int i = 0; i < 5; i++) {
                double rpm =
                        machine.idleRpm() + (0.25 + 0.7 * random.nextDouble()) * (machine.maxRpm() - machine.idleRpm());
                program = (i == 0 ? program : program.rampTo(rpm, 0.3 + 2 * random.nextDouble())).hold(rpm, 12);
            }
            GroundRun run = Rig.of(machine, 5000 + seed)
                    .program(program.wandering(0.002 + 0.004 * random.nextDouble(), 4))
                    .sensors(Sensor.accelerometer("up", Axis.UP))
                    .sampling(Sampling.even(2000))
                    .with(Sound.hum(seed % 2 == 0 ? 50 : 60, hum))
                    .make();
            all.addAll(tried("seed " + seed, run, bench.answer(run, OptionalDouble.empty())));
        }
        return all;
    }

    private static List<Tried> tried(String what, GroundRun run, RunOrders got) {
        List<Tried> all = new ArrayList<>();
        for (Truth.Dwell dwell : run.truth().dwells()) {
            Optional<Dwell> found = got.speed().confirmed()
                    ? got.speed().dwells().stream()
                            .filter(d -> Math.min(d.toS(), dwell.toS()) - Math.max(d.fromS(), dwell.fromS()) > 4)
                            .findFirst()
                    : Optional.empty();
            String words = ConfirmationBench.words(got);
            if (found.isEmpty()) {
                all.add(new Tried(what, false, 0, 0, 0, 0, words));
                continue;
            }
            Dwell there = found.get();
            double trueHz = run.truth().track().propellerRpm().mean(there.fromS(), there.toS()) / 60;
            Optional<Level.Measured> pass = bladePass(got, there);
            double truePass = dwell.line("up", Shaft.PROPELLER, run.machine().blades())
                    .orElseThrow()
                    .amplitudeAtFrequency();
            String where = String.format(
                    Locale.ROOT,
                    "%s: true %.1f to %.1f s at %.3f Hz, found %.1f to %.1f",
                    what,
                    dwell.fromS(),
                    dwell.toS(),
                    dwell.propellerRpm() / 60,
                    there.fromS(),
                    there.toS());
            all.add(new Tried(
                    where,
                    true,
                    (there.propellerHz() - trueHz) / there.standardErrorHz(),
                    there.propellerHz() / trueHz - 1,
                    pass.map(level -> run.sensors().get(0).fullScale() * level.amplitude() / truePass)
                            .orElse(0.0),
                    pass.map(level -> (level.ciHigh() - level.ciLow()) / 2 / level.amplitude())
                            .orElse(0.0),
                    words));
        }
        return all;
    }

    private static Optional<Level.Measured> bladePass(RunOrders got, Dwell dwell) {
        for (DwellOrders each : got.channels().get(0).dwells()) {
            for (OrderReading reading : each.readings()) {
                if (each.dwell().equals(dwell)
                        && reading.line().bladePass()
                        && reading.level() instanceof Level.Measured measured
                        && measured.detected()) {
                    return Optional.of(measured);
                }
            }
        }
        return Optional.empty();
    }

    private static void print(String what, List<Tried> all) {
        all.stream()
                .filter(each -> each.slipped() || each.bladePassWrong())
                .forEach(each -> System.out.println("   " + each));
        System.out.printf(
                Locale.ROOT,
                "== %s: %d dwells, %d confirmed, %d slipped, speed within 2 standard errors %d, blade pass wrong %d%n",
                what,
                all.size(),
                all.stream().filter(Tried::confirmed).count(),
                all.stream().filter(Tried::slipped).count(),
                all.stream()
                        .filter(each -> each.confirmed() && Math.abs(each.errors()) < 2)
                        .count(),
                all.stream().filter(Tried::bladePassWrong).count());
    }

    /** {@code steps FROM TO HUM} or {@code belts FROM TO HUM}: seeds. */
    public static void main(String[] args) throws IOException {
        DwellBench bench = new DwellBench(new ConfirmationBench(Files.createTempDirectory("bench")));
        int from = Integer.parseInt(args[1]);
        int to = Integer.parseInt(args[2]);
        print(args[0], bench.steps(from, to, Double.parseDouble(args[3]), args[0].equals("belts")));
    }
}
