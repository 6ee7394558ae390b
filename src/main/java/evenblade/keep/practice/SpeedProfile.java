package evenblade.keep.practice;

import java.util.ArrayList;
import java.util.List;

/**
 * Propeller speed over a whole invented run, with the angle turned known exactly: straight stretches
 * (dwells and ramps), each multiplied by {@code 1 + wander}. Before the start and after the end the
 * outer stretches go on.
 */
public final class SpeedProfile {
    /** Default band of irregular wander, in hertz. */
    private static final double WANDER_SLOWEST_HZ = 0.05;

    private static final double WANDER_FASTEST_HZ = 0.4; // invented: gusts of some seconds

    private final List<Stretch> stretches;
    private final Wander wander;

    /**
     * A straight stretch of set speed.
     *
     * @param fromS start
     * @param toS end
     * @param fromHz set propeller speed at the start
     * @param toHz set propeller speed at the end
     */
    public record Stretch(double fromS, double toS, double fromHz, double toHz) {
        public boolean isDwell() {
            return fromHz == toHz;
        }

        double slope() {
            return (toHz - fromHz) / (toS - fromS);
        }
    }

    /** What to add on each stretch so that the angle starts at zero and goes on without a step. */
    private final double[] joint;

    private SpeedProfile(List<Stretch> stretches, Wander wander) {
        this.stretches = List.copyOf(stretches);
        this.wander = wander;
        this.joint = new double[stretches.size()];
        joint[0] = -onStretch(0, 0);
        for (int i = 1; i < joint.length; i++) {
            double timeS = stretches.get(i).fromS();
            joint[i] = joint[i - 1] + onStretch(i - 1, timeS) - onStretch(i, timeS);
        }
    }

    /** One dwell. */
    public static SpeedProfile steady(double propellerHz, double durationS) {
        return startingAt(propellerHz).thenDwell(durationS);
    }

    /** Starts a run of several stretches; it has no length yet. */
    public static Start startingAt(double propellerHz) {
        return new Start(propellerHz);
    }

    /**
     * Where a run begins.
     *
     * @param propellerHz set propeller speed
     */
    public record Start(double propellerHz) {
        public SpeedProfile thenDwell(double durationS) {
            return new SpeedProfile(List.of(new Stretch(0, durationS, propellerHz, propellerHz)), Wander.NONE);
        }

        public SpeedProfile thenRampTo(double toHz, double durationS) {
            return new SpeedProfile(List.of(new Stretch(0, durationS, propellerHz, toHz)), Wander.NONE);
        }
    }

    /** This run with a dwell at its last set speed added. */
    public SpeedProfile thenDwell(double durationS) {
        return with(last().toHz(), durationS);
    }

    /** This run with a ramp from its last set speed added. */
    public SpeedProfile thenRampTo(double toHz, double durationS) {
        return with(toHz, durationS);
    }

    private SpeedProfile with(double toHz, double durationS) {
        List<Stretch> more = new ArrayList<>(stretches);
        more.add(new Stretch(last().toS(), last().toS() + durationS, last().toHz(), toHz));
        return new SpeedProfile(more, wander);
    }

    /** These set speeds with another wander. */
    public SpeedProfile wandering(Wander other) {
        return new SpeedProfile(stretches, other);
    }

    /**
     * These set speeds with irregular wander between 0.05 and 0.4 Hz.
     *
     * @param share largest excursion as a share of the set speed: 0.01 for ± 1 %
     */
    public SpeedProfile wandering(double share, long seed) {
        return wandering(Wander.irregular(share, WANDER_SLOWEST_HZ, WANDER_FASTEST_HZ, durationS(), seed));
    }

    public List<Stretch> stretches() {
        return stretches;
    }

    /** The stretches at one set speed. */
    public List<Stretch> dwells() {
        return stretches.stream().filter(Stretch::isDwell).toList();
    }

    public double durationS() {
        return last().toS();
    }

    /** True propeller speed in revolutions per second. */
    public double propellerHzAt(double timeS) {
        Stretch stretch = stretches.get(indexAt(timeS));
        return (stretch.fromHz() + stretch.slope() * (timeS - stretch.fromS())) * (1 + wander.at(timeS));
    }

    /** Propeller revolutions turned since time zero. */
    public double revolutionsAt(double timeS) {
        int index = indexAt(timeS);
        return joint[index] + onStretch(index, timeS);
    }

    /** True mean propeller speed between two times, in revolutions per second. */
    public double meanHz(double fromS, double toS) {
        return (revolutionsAt(toS) - revolutionsAt(fromS)) / (toS - fromS);
    }

    /** The time at which the given number of revolutions has been turned, to a tenth of a nanosecond. */
    public double timeOfRevolution(double revolutions) {
        double timeS = revolutions / meanHz(0, durationS());
        for (int i = 0; i < 50; i++) {
            double step = (revolutions - revolutionsAt(timeS)) / propellerHzAt(timeS);
            timeS += step;
            if (Math.abs(step) < 1e-10) {
                break;
            }
        }
        return timeS;
    }

    /** Revolutions at a time by the formula of one stretch, but for the constant that joins it on. */
    private double onStretch(int index, double timeS) {
        Stretch stretch = stretches.get(index);
        double passed = timeS - stretch.fromS();
        double set = stretch.fromHz() * passed + stretch.slope() * passed * passed / 2;
        return set + wander.revolutions(timeS, stretch.fromHz(), stretch.slope(), stretch.fromS());
    }

    private int indexAt(double timeS) {
        int index = 0;
        while (index < stretches.size() - 1 && timeS >= stretches.get(index).toS()) {
            index++;
        }
        return index;
    }

    private Stretch last() {
        return stretches.get(stretches.size() - 1);
    }
}
