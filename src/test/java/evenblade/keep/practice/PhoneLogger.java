package evenblade.keep.practice;

import evenblade.input.recording.TimeBase;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * A phone strapped to the engine: three directions with gravity in them, stamps that jitter, rows that are
 * lost or come twice, 16 bit over a small range. Nothing keeps lines above half the rate out: they fold down.
 *
 * @param rateHz rows per second
 * @param rangeG largest acceleration it can give, in g
 * @param jitterS standard deviation of the stamps
 * @param lostShare share (0 to 1) of rows missing
 * @param doubledShare share (0 to 1) of rows written twice
 */
public record PhoneLogger(double rateHz, double rangeG, double jitterS, double lostShare, double doubledShare)
        implements Sensor {
    private static final double STANDARD_GRAVITY = 9.80665; // exact by definition (SI)
    private static final int STEPS = 1 << 15; // 16 bit
    /** The phone lies a little askew: share of gravity in each direction, ahead, sideways, up. */
    private static final double[] GRAVITY_SHARES = {0.05, -0.03, 0.9983};

    private static final List<String> NAMES = List.of("shake along", "shake across", "shake up");
    private static final List<String> HEADERS =
            NAMES.stream().map(name -> name + " (m/s2)").toList();

    /** 416 rows per second, ± 4 g, 0.4 ms jitter, now and then a row lost or doubled. */
    public static PhoneLogger usual() {
        return new PhoneLogger(416, 4, 0.4e-3, 0.002, 0.001);
    }

    @Override
    public String description() {
        return "phone accelerometer on the engine, gravity not taken out";
    }

    @Override
    public String extension() {
        return ".csv";
    }

    @Override
    public List<TrueChannel> record(PracticeRun run, Path file) throws IOException {
        double fullScale = rangeG * STANDARD_GRAVITY;
        TimeBase time = JitteredClock.jittered(
                rateHz, run.speed().durationS(), jitterS, lostShare, Seeds.part(run.seed(), 200));
        List<double[]> columns = new ArrayList<>();
        List<TrueChannel> truth = new ArrayList<>();
        for (SensorAxis axis : SensorAxis.values()) {
            SyntheticRun felt = run.felt(axis);
            double[] samples = felt.samples(time);
            double gravity = GRAVITY_SHARES[axis.ordinal()] * STANDARD_GRAVITY;
            for (int i = 0; i < samples.length; i++) {
                samples[i] += gravity;
            }
            long beyond = Sensor.beyond(samples, fullScale);
            quantise(samples, fullScale);
            columns.add(samples);
            truth.add(new TrueChannel(columns.size(), NAMES.get(axis.ordinal()), "m/s2", fullScale, beyond, felt));
        }
        new LoggerFile("clock (ms)", HEADERS, ',', doubledShare, Seeds.part(run.seed(), 201))
                .write(file, List.of(Invention.NOTE), time, columns);
        return truth;
    }

    private static void quantise(double[] samples, double fullScale) {
        double step = fullScale / STEPS;
        for (int i = 0; i < samples.length; i++) {
            double steps = Math.rint(samples[i] / step);
            samples[i] = step * Math.max(-STEPS, Math.min(STEPS - 1, steps));
        }
    }
}
