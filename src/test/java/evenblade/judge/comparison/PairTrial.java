package evenblade.judge.comparison;

import evenblade.base.numeric.Phasor;
import evenblade.input.recording.Recording;
import evenblade.keep.practice.Line;
import evenblade.keep.practice.Noise;
import evenblade.keep.practice.SpeedProfile;
import evenblade.keep.practice.SyntheticRun;
import evenblade.machine.installation.Installation;
import evenblade.measure.orders.OrderMeter;
import evenblade.measure.speed.SpeedFinder;
import evenblade.measure.speed.SpeedPrior;
import evenblade.measure.speed.SpeedResult;
import java.util.List;
import java.util.Random;

/**
 * Invented ground runs of one machine on different days, through speed and orders to the comparison: two of them
 * up to 1.5 % of rpm apart, ± 0.5 % wander, mass imbalance growing with speed squared, wind that makes
 * blade pass come and go within a run (8 %, periods of 3 to 12 s) and from run to run (4 %) and leaves noise,
 * and a 1× that repeats to 1.2 % (seat, temperature, fuel).
 */
final class PairTrial {
    private static final Installation MACHINE = Invented.INSTALLATION;
    private static final double SET_HZ = 4800 / 60.0 / Invented.RATIO;
    private static final double RATE_HZ = 512;
    private static final double SECONDS = 15;
    private static final double SPEED_OFF = 0.0075;
    private static final double ONCE_SCATTER = 0.012;
    private static final double WIND_SCATTER = 0.04;
    private static final double GUSTS = 0.08;

    private final Random random;

    PairTrial(long seed) {
        this.random = new Random(seed);
    }

    /** One run; {@code once} is its true 1× at the wanted speed, as a share of the machine's. */
    MeasuredRun run(String name, double once) {
        double hz = SET_HZ * (1 + SPEED_OFF * (2 * random.nextDouble() - 1));
        SpeedProfile speed = SpeedProfile.steady(hz, SECONDS).wandering(0.005, random.nextLong());
        double wind = Math.exp(WIND_SCATTER * random.nextGaussian());
        SyntheticRun run = SyntheticRun.at(speed)
                .withLine(growing(1, 0.6 * once * Math.exp(ONCE_SCATTER * random.nextGaussian())))
                .withLine(growing(2, 0.1 * Math.exp(ONCE_SCATTER * random.nextGaussian())))
                .withLine(growing(3, wind))
                .withLine(growing(6, 0.3 * wind))
                .withLine(growing(Invented.RATIO, 0.3 * Math.exp(ONCE_SCATTER * random.nextGaussian())))
                .withLine(growing(2 * Invented.RATIO, 0.8 * Math.exp(WIND_SCATTER * random.nextGaussian())))
                .withLines(gusts(hz, wind))
                .withNoise(new Noise(0.25, 0.1))
                .withSeed(random.nextLong());
        Recording recording = run.recording(RATE_HZ);
        SpeedResult found =
                SpeedFinder.find(recording, recording.channels(), Invented.TABLE, SpeedPrior.around(SET_HZ, 0.05));

        return new MeasuredRun(
                name,
                Invented.gearbox(),
                false,
                found.doubt(),
                MACHINE.propeller().blades(),
                MACHINE.reduction().ratio() * (1 + found.ratioCorrection()),
                OrderMeter.measure(recording, recording.channels(), Invented.TABLE, found));
    }

    /** A force that grows with speed squared. */
    private Line growing(double order, double amplitude) {
        double phase = 360 * random.nextDouble();
        return new Line(order, hz -> Phasor.ofDegrees(amplitude * hz * hz / (SET_HZ * SET_HZ), phase));
    }

    /** Side bands that make blade pass swell and fade with each gust. */
    private List<Line> gusts(double hz, double bladePass) {
        double beat = (1 / (3 + 9 * random.nextDouble())) / hz;
        double phase = 360 * random.nextDouble();
        return List.of(
                Line.of(3 - beat, GUSTS / 2 * bladePass, phase), Line.of(3 + beat, GUSTS / 2 * bladePass, -phase));
    }

    Random random() {
        return random;
    }
}
