package evenblade.keep.practice;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * Slow wandering of a running engine about its set speed, as a share of that speed: {@code w(t) = Σ
 * c_i·sin(2π f_i t + ψ_i)}, so that the angle turned can be had exactly.
 *
 * @param ripples the parts; none for a perfectly steady engine
 */
public record Wander(List<Ripple> ripples) {
    public static final Wander NONE = new Wander(List.of());

    private static final int PARTS = 6; // invented: enough to look irregular

    /**
     * One part.
     *
     * @param share of the set speed, peak
     * @param frequencyHz of the coming and going
     * @param phaseRad at time zero
     */
    public record Ripple(double share, double frequencyHz, double phaseRad) {}

    public Wander {
        ripples = List.copyOf(ripples);
    }

    /**
     * Irregular wandering between two frequencies, scaled so that its largest excursion within the run
     * is the given share.
     *
     * @param share largest excursion as a share of the set speed: 0.01 for ± 1 %
     * @param slowestHz slowest part
     * @param fastestHz fastest part
     * @param durationS of the run in which the excursion is reached
     * @param seed same seed, same wander
     */
    public static Wander irregular(double share, double slowestHz, double fastestHz, double durationS, long seed) {
        if (share == 0) {
            return NONE;
        }
        Random random = new Random(seed);
        List<Ripple> raw = new ArrayList<>();
        for (int i = 0; i < PARTS; i++) {
            double step = (i + random.nextDouble()) / PARTS;
            double frequencyHz = slowestHz * Math.pow(fastestHz / slowestHz, step);
            double weight = Math.sqrt(slowestHz / frequencyHz) * (0.5 + random.nextDouble());
            raw.add(new Ripple(weight, frequencyHz, 2 * Math.PI * random.nextDouble()));
        }
        Wander unscaled = new Wander(raw);
        double factor = share / unscaled.largest(durationS, fastestHz);
        return new Wander(raw.stream()
                .map(part -> new Ripple(factor * part.share(), part.frequencyHz(), part.phaseRad()))
                .toList());
    }

    /** Deviation from the set speed at a time, as a share of it. */
    public double at(double timeS) {
        double sum = 0;
        for (Ripple part : ripples) {
            sum += part.share() * Math.sin(2 * Math.PI * part.frequencyHz() * timeS + part.phaseRad());
        }
        return sum;
    }

    /**
     * An antiderivative of {@code (hz + slope·(t − fromS))·w(t)}: the revolutions that wander adds on a
     * straight stretch of speed.
     */
    double revolutions(double timeS, double hz, double slope, double fromS) {
        double sum = 0;
        double baseHz = hz + slope * (timeS - fromS);
        for (Ripple part : ripples) {
            double omega = 2 * Math.PI * part.frequencyHz();
            double angle = omega * timeS + part.phaseRad();
            double rampPart = slope == 0 ? 0 : slope * Math.sin(angle) / omega;
            sum += part.share() * (rampPart - baseHz * Math.cos(angle)) / omega;
        }
        return sum;
    }

    private double largest(double durationS, double fastestHz) {
        int steps = (int) Math.ceil(durationS * fastestHz * 40) + 1;
        double most = 0;
        for (int i = 0; i <= steps; i++) {
            most = Math.max(most, Math.abs(at(durationS * i / steps)));
        }
        return most;
    }
}
