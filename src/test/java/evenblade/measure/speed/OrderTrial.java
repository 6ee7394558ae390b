package evenblade.measure.speed;

import evenblade.input.recording.Recording;
import evenblade.keep.practice.Line;
import evenblade.keep.practice.SpeedProfile;
import evenblade.keep.practice.SyntheticRun;
import evenblade.machine.installation.OrderTable;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderMeter;
import evenblade.measure.orders.OrderReading;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;

/** One invented run of a machine, every line of it measured and held against what was put in. */
public final class OrderTrial {
    private static final double RATE_HZ = 2400;

    private OrderTrial() {}

    /**
     * One line.
     *
     * @param bound Cramér–Rao bound of an amplitude, √(2σ²/N) (Rife &amp; Boorstyn 1974; from memory)
     */
    public record Outcome(
            double truth,
            double amplitude,
            double standardError,
            double ciLow,
            double ciHigh,
            double bound,
            boolean detected) {
        public boolean held() {
            return truth >= ciLow && truth <= ciHigh;
        }

        public boolean strong() {
            return truth > 4 * bound;
        }

        public double error() {
            return amplitude - truth;
        }

        public boolean beyond() {
            return Math.abs(error()) > 0.01 * truth + 2 * standardError;
        }

        public boolean falselyDetected() {
            return truth == 0 && detected;
        }
    }

    public static int machines() {
        return Machine.ALL.size();
    }

    public static List<Outcome> of(int index, double aboveNoiseDb, double wander, double seconds, long seed) {
        Machine machine = Machine.ALL.get(index);
        Random random = new Random(7919 * seed + index);
        random.nextDouble();
        double rpm = machine.idleRpm() + (0.2 + 0.75 * random.nextDouble()) * (machine.maxRpm() - machine.idleRpm());
        double hz = rpm / 60 / machine.ratio();
        SpeedProfile profile = SpeedProfile.steady(hz, seconds);
        if (wander > 0) {
            profile = profile.wandering(wander, seed);
        }
        List<Line> lines = new ArrayList<>(machine.lines(random));
        lines.removeIf(line -> line.propellerOrder() > 1.5 && random.nextInt(4) == 0);
        SyntheticRun run = SyntheticRun.at(profile)
                .withLines(lines)
                .withStrongestLineAbove(aboveNoiseDb)
                .withSeed(seed);
        Recording recording = run.recording(RATE_HZ);
        SpeedResult speed =
                SpeedFinder.find(recording, recording.channels(), machine.table(), SpeedPrior.around(hz * 1.02, 0.05));
        List<Outcome> outcomes = new ArrayList<>();
        for (DwellOrders dwell : OrderMeter.measure(recording, recording.channels(), machine.table(), speed)
                .get(0)
                .dwells()) {
            Set<Double> seen = new HashSet<>();
            for (OrderReading reading : dwell.readings()) {
                boolean first = seen.add(reading.line().propellerOrder());
                if (first && reading.level() instanceof Level.Measured level && !merged(reading)) {
                    double truth = run.truth(
                                    reading.line().propellerOrder(),
                                    dwell.dwell().fromS(),
                                    dwell.dwell().toS())
                            .magnitude();
                    double bound = run.noise().whiteRms()
                            * Math.sqrt(2 / (RATE_HZ * dwell.dwell().durationS()));
                    outcomes.add(new Outcome(
                            truth,
                            level.amplitude(),
                            level.standardError(),
                            level.ciLow(),
                            level.ciHigh(),
                            bound,
                            level.detected()));
                }
            }
        }
        return outcomes;
    }

    /** Whether the reading is of several lines that lie apart, too close for the run's length. */
    private static boolean merged(OrderReading reading) {
        return reading.inseparableFrom().stream().anyMatch(line -> !OrderTable.coincide(line, reading.line()));
    }
}
