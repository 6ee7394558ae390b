package evenblade.judge.balance;

import evenblade.base.numeric.Phasor;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;

/**
 * A propeller with a heavy side on an engine in soft mounts, invented. Its physics are written down here and nowhere in
 * the program: a mass on a spring, m·x″ + c·x′ + k·x = U·ω²·e^{jωt}, read as acceleration −ω²·x at a sensor whose angle
 * is anything. From run to run the whole answer changes by a share of itself, the speed by a little, the line is read
 * with its own error, and every weight is weighed and placed with an error that stays while it stays on.
 */
final class InventedMachine {
    private static final double ENGINE_KG = 60;
    private static final double MOUNT_RAD_PER_S = 2 * Math.PI * 11;
    private static final double DAMPING = 0.1;
    private static final double SPEED_JITTER = 0.002;
    static final double LINE_ERROR_SHARE = 0.01;

    private final Random random;
    /** Where the hub is heavy, g·mm. */
    final Phasor heavy;

    final double scatterShare;
    private final double omega;
    private final double sensorDeg;

    InventedMachine(Random random) {
        this.random = random;
        heavy = Phasor.ofDegrees(300 + 1500 * random.nextDouble(), 360 * random.nextDouble());
        scatterShare = 0.03 + 0.05 * random.nextDouble();
        omega = 2 * Math.PI * (28 + 14 * random.nextDouble());
        sensorDeg = 360 * random.nextDouble();
    }

    /** The line in m/s² for what is on the hub, heavy side included; nothing scatters. */
    private Phasor line(Phasor gmm, double radPerS) {
        double stiffness = ENGINE_KG * MOUNT_RAD_PER_S * MOUNT_RAD_PER_S;
        double damping = 2 * DAMPING * ENGINE_KG * MOUNT_RAD_PER_S;
        Phasor resists = new Phasor(stiffness - ENGINE_KG * radPerS * radPerS, damping * radPerS);
        Phasor pull = gmm.times(1e-6 * radPerS * radPerS);
        return pull.over(resists).times(-radPerS * radPerS).times(Phasor.ofDegrees(1, sensorDeg));
    }

    /** Size of the line without weights, as a scale. */
    double plain() {
        return line(heavy, omega).magnitude();
    }

    /** What a weight truly is on the hub when its figures are these. */
    Phasor truly(Weight weight) {
        double mass = weight.massG() + weight.massErrorG() * random.nextGaussian();
        double angle = weight.angleDeg() + Weight.PLACING_ERROR_DEG * random.nextGaussian();
        return Phasor.ofDegrees(mass * weight.radiusMm(), angle);
    }

    /** The line of one run with what is truly on. */
    Phasor run(Phasor on) {
        double speed = omega * (1 + SPEED_JITTER * random.nextGaussian());
        Phasor scattered = new Phasor(1 + scatterShare * random.nextGaussian(), scatterShare * random.nextGaussian());
        return line(heavy.plus(on), speed).times(scattered);
    }

    /** The same as read, with the error of the line. */
    WeightedReading read(Phasor on, boolean phase, List<Weight> named) {
        double error = LINE_ERROR_SHARE * plain();
        Phasor line = run(on).plus(new Phasor(error * random.nextGaussian(), error * random.nextGaussian()));
        return new WeightedReading(
                line.magnitude(), phase ? OptionalDouble.of(line.degrees()) : OptionalDouble.empty(), error, named);
    }

    /**
     * Runs of a job: some without weights, then one weight at each of some angles.
     *
     * @param trialShare size of the trial weight over the unbalance
     * @param repeats how often each is run
     */
    List<WeightedReading> job(double trialShare, boolean phase, int repeats, double... anglesDeg) {
        List<WeightedReading> runs = new ArrayList<>();
        for (int i = 0; i < repeats; i++) {
            runs.add(read(Phasor.ZERO, phase, List.of()));
        }
        double mass = trialShare * heavy.magnitude() / Runs.RADIUS_MM;
        double massError = Weight.usualMassErrorG(mass) * random.nextGaussian();
        for (double angle : anglesDeg) {
            Weight named = Weight.of(mass, Runs.RADIUS_MM, angle);
            Phasor on = Phasor.ofDegrees(
                    (mass + massError) * Runs.RADIUS_MM, angle + Weight.PLACING_ERROR_DEG * random.nextGaussian());
            for (int i = 0; i < repeats; i++) {
                runs.add(read(on, phase, List.of(named)));
            }
        }
        return runs;
    }
}
