package evenblade.bench;

import evenblade.measure.orders.RunOrders;
import evenblade.measure.speed.Dwell;
import evenblade.rig.Axis;
import evenblade.rig.GroundRun;
import evenblade.rig.Machine;
import evenblade.rig.Rig;
import evenblade.rig.Sampling;
import evenblade.rig.Sensor;
import evenblade.rig.SpeedProgram;
import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;

/** One hold of the throttle of 30 s in which the speed drifts, wanders, or jerks, each held against the truth. */
public final class HoldBench {
    private static final double HOLD_S = 30;

    private final ConfirmationBench bench;

    HoldBench(ConfirmationBench bench) {
        this.bench = bench;
    }

    /**
     * One hold.
     *
     * @param dwells found in it
     * @param share of it that they cover
     * @param errors of their speeds, in standard errors
     * @param stated standard errors, as shares of the speed
     */
    record Tried(int dwells, double share, List<Double> errors, List<Double> stated) {
        boolean whole() {
            return dwells == 1 && share > 0.95;
        }
    }

    private static Map<String, SpeedProgram> programs(Machine machine) {
        double idle = machine.idleRpm();
        double middle = (idle + machine.maxRpm()) / 2;
        SpeedProgram held = SpeedProgram.still().hold(middle, HOLD_S);
        SpeedProgram idling = SpeedProgram.still().hold(idle, HOLD_S).wandering(0.002, 4);
        Map<String, SpeedProgram> all = new LinkedHashMap<>();
        all.put("drift 2 %", SpeedProgram.still().drifting(middle, HOLD_S, 0.02).wandering(0.002, 4));
        all.put("drift 5 %", SpeedProgram.still().drifting(middle, HOLD_S, 0.05).wandering(0.002, 4));
        all.put("wander 1 %", held.wandering(0.01, 4));
        all.put("gusts 0.5 %", held.wandering(0.002, 4).gusty(0.005));
        all.put("gusts 1 %", held.wandering(0.002, 4).gusty(0.01));
        all.put("uneven idle 1 %", idling.unevenIdle(0.01));
        all.put("uneven idle 1.5 %", idling.unevenIdle(0.015));
        return all;
    }

    Map<String, List<Tried>> holds(int from, int to) throws IOException {
        Map<String, List<Tried>> tried = new LinkedHashMap<>();
        for (int seed = from; seed < to; seed++) {
            Machine machine = ConfirmationBench.GEARED.get(seed % ConfirmationBench.GEARED.size());
            for (Map.Entry<String, SpeedProgram> each : programs(machine).entrySet()) {
                GroundRun run = Rig.of(machine, 9000 + seed)
                        .program(each.getValue())
                        .sensors(Sensor.accelerometer("up", Axis.UP))
                        .sampling(Sampling.even(2000))
                        .make();
                tried.computeIfAbsent(each.getKey(), what -> new ArrayList<>())
                        .add(tried(run, bench.answer(run, OptionalDouble.empty())));
            }
        }
        return tried;
    }

    private static Tried tried(GroundRun run, RunOrders got) {
        List<Dwell> dwells = got.speed().confirmed() ? got.speed().dwells() : List.of();
        return new Tried(
                dwells.size(),
                dwells.stream().mapToDouble(Dwell::durationS).sum() / HOLD_S,
                dwells.stream()
                        .map(d -> (d.propellerHz()
                                        - run.truth().track().propellerRpm().mean(d.fromS(), d.toS()) / 60)
                                / d.standardErrorHz())
                        .toList(),
                dwells.stream().map(d -> d.standardErrorHz() / d.propellerHz()).toList());
    }

    /** {@code FROM TO}: seeds. */
    public static void main(String[] args) throws IOException {
        HoldBench bench = new HoldBench(new ConfirmationBench(Files.createTempDirectory("bench")));
        bench.holds(Integer.parseInt(args[0]), Integer.parseInt(args[1])).forEach((what, all) -> {
            List<Double> errors = all.stream().flatMap(t -> t.errors().stream()).toList();
            double[] stated = all.stream()
                    .flatMap(t -> t.stated().stream())
                    .mapToDouble(Double::doubleValue)
                    .sorted()
                    .toArray();
            System.out.printf(
                    Locale.ROOT,
                    "%s: %d holds, %d confirmed, %d one dwell and whole, speed within 2 standard errors %d of %d, median stated %.0f ppm%n",
                    what,
                    all.size(),
                    all.stream().filter(t -> t.dwells() > 0).count(),
                    all.stream().filter(Tried::whole).count(),
                    errors.stream().filter(e -> Math.abs(e) < 2).count(),
                    errors.size(),
                    1e6 * stated[stated.length / 2]);
        });
    }
}
