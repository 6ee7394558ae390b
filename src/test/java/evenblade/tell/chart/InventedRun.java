package evenblade.tell.chart;

import evenblade.input.recording.Series;
import evenblade.machine.installation.Engine;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.Installation.Propeller;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.OrderTable;
import evenblade.machine.installation.Reduction;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.DwellOrders.UnexplainedLine;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import evenblade.measure.speed.Dwell;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;

/** An invented run with lines of known frequency and amplitude, for pictures. */
record InventedRun(Installation installation, double propellerHz) {
    static final Caption CAPTION = Caption.of(
            "invented-run-2.wav",
            "channel 1",
            "0.0 to 30.0 s",
            "engine 4800 rpm, propeller 1975 rpm",
            "speed confirmed by the signal");

    static InventedRun geared(int blades, int cylinders, Engine.Cycle cycle, Reduction reduction) {
        return new InventedRun(
                new Installation(
                        Optional.of("invented"),
                        new Engine(cycle, cylinders, OptionalDouble.empty(), OptionalDouble.empty()),
                        reduction,
                        new Propeller(blades, Optional.empty(), Optional.empty()),
                        List.of()),
                32.92);
    }

    static InventedRun usual() {
        return geared(3, 4, Engine.Cycle.FOUR_STROKE, new Reduction(Reduction.Kind.UNSTATED, 2.43, Optional.empty()));
    }

    static InventedRun coinciding() {
        return geared(3, 2, Engine.Cycle.TWO_STROKE, new Reduction(Reduction.Kind.UNSTATED, 3, Optional.empty()));
    }

    static InventedRun crowded() {
        return geared(6, 6, Engine.Cycle.FOUR_STROKE, new Reduction(Reduction.Kind.GEAR, 2.3, Optional.empty()));
    }

    Dwell dwell() {
        return new Dwell(0, 30, propellerHz, 0.0007, propellerHz * 0.995, propellerHz * 1.005);
    }

    DwellOrders orders() {
        Random random = new Random(7);
        List<OrderReading> readings = new ArrayList<>();
        List<OrderLine> lines = installation.orders().lines();
        for (OrderLine line : lines) {
            double hz = line.propellerOrder() * propellerHz;
            double amplitude = amplitude(line, random);
            double se = 0.008 + 0.03 * amplitude;
            boolean detected = amplitude > 4 * se;
            Level level = hz > 330
                    ? new Level.Folded(400 - hz % 400)
                    : new Level.Measured(
                            amplitude,
                            se,
                            Math.max(0, amplitude - 2 * se),
                            amplitude + 2 * se,
                            OptionalDouble.empty(),
                            detected,
                            Level.Estimator.COHERENT);
            List<OrderLine> same = lines.stream()
                    .filter(o -> o != line && OrderTable.coincide(o, line))
                    .toList();
            readings.add(new OrderReading(line, hz, level, same));
        }
        return new DwellOrders(
                dwell(),
                readings,
                List.of(new UnexplainedLine(50, 0.12, 50 / propellerHz, 50 / propellerHz / 2.43, false, true)),
                Optional.of(new DwellOrders.Unevenness(0.83, 0.79, 0.87)));
    }

    private static double amplitude(OrderLine line, Random random) {
        return switch (line.role()) {
            case UNEVEN_PROPELLER -> line.order() == 1 ? 0.62 : 0.02 + 0.15 * random.nextDouble() / line.order();
            case BLADE_PASS -> 0.74 / line.order() * 3;
            case FIRING -> 1.2;
            case CRANK -> 0.1;
            case HALF_CRANK -> 0.012 + 0.1 * random.nextDouble();
            case MESH -> 0.01;
        };
    }

    Series spectrumHz() {
        double[] hz = new double[2000];
        for (int i = 0; i < hz.length; i++) {
            hz[i] = 0.25 * i;
        }
        return Series.of(hz);
    }

    Series spectrum(double share) {
        Random random = new Random(3);
        List<OrderMark> marks = OrderRows.marks(orders());
        double[] amplitude = new double[2000];
        for (int i = 0; i < amplitude.length; i++) {
            double hz = 0.25 * i;
            double sum = 1e-5 * (1 + 0.5 * random.nextDouble());
            for (OrderMark mark : marks) {
                double smear = 0.3 + 0.003 * mark.frequencyHz();
                double z = (hz - mark.frequencyHz()) / smear;
                sum += Math.pow(mark.amplitude().orElse(0.01) * 0.7 * share / (1 + z * z), 2);
            }
            amplitude[i] = Math.sqrt(sum);
        }
        return Series.of(amplitude);
    }

    Series trackTimeS() {
        double[] time = new double[600];
        for (int i = 0; i < time.length; i++) {
            time[i] = 0.1 * i;
        }
        return Series.of(time);
    }

    /** Three dwells with ramps between. */
    Series trackHz() {
        Random random = new Random(5);
        double[] hz = new double[600];
        double wander = 0;
        for (int i = 0; i < hz.length; i++) {
            double t = 0.1 * i;
            double share =
                    t < 15 ? 0.6 : t < 20 ? 0.6 + 0.04 * (t - 15) : t < 35 ? 0.8 : t < 40 ? 0.8 + 0.04 * (t - 35) : 1;
            wander = 0.95 * wander + 0.0012 * random.nextGaussian();
            hz[i] = propellerHz * share * (1 + wander);
        }
        return Series.of(hz);
    }

    List<Dwell> dwells() {
        return List.of(part(0, 15, 0.6), part(20, 35, 0.8), part(40, 60, 1));
    }

    private Dwell part(double from, double to, double share) {
        double hz = propellerHz * share;
        return new Dwell(from, to, hz, 0.0007, 0.995 * hz, 1.005 * hz);
    }

    WaterfallPicture.Data waterfall() {
        int frames = 120;
        int bins = 400;
        Random random = new Random(11);
        List<OrderMark> marks = OrderRows.marks(orders());
        Series track = trackHz();
        double[] db = new double[frames * bins];
        for (int frame = 0; frame < frames; frame++) {
            double hz = track.at(frame * 5);
            for (int bin = 0; bin < bins; bin++) {
                double sum = 1e-5 * (0.2 - Math.log(random.nextDouble()));
                for (OrderMark mark : marks) {
                    double lineHz = mark.kind() == MarkKind.OTHER ? mark.frequencyHz() : mark.propellerOrder() * hz;
                    double z = (bin - lineHz) / 1.2;
                    sum += Math.pow(mark.amplitude().orElse(0.01), 2) * Math.exp(-z * z);
                }
                db[frame * bins + bin] = 10 * Math.log10(sum);
            }
        }
        return new WaterfallPicture.Data(
                CAPTION,
                0.25,
                0.5,
                frames,
                1,
                bins,
                Series.of(db),
                "level (dB re 1 m/s² peak)",
                OrderRows.marks(orders()),
                trackTimeS(),
                track,
                OrderRows.upToHz(orders()));
    }
}
