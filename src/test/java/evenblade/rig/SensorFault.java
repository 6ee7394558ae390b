package evenblade.rig;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Consumer;

/** Faults between the machine and the file: the sensor's hold, its recorder. */
public final class SensorFault implements Disturbance {
    private interface Change {
        void apply(double[] x, Scene scene, int channel, Dice dice);
    }

    private final Map<String, Object> truth = new LinkedHashMap<>();
    private final Change change;

    private SensorFault(String kind, Change change, Consumer<Map<String, Object>> numbers) {
        this.change = change;
        truth.put("kind", kind);
        numbers.accept(truth);
    }

    /** The sensor's hold gives way at a time: from there on all it feels arrives times {@code factor} (0.35 is usual here). */
    public static SensorFault letGo(double atS, double factor) {
        return new SensorFault(
                "let-go",
                (x, scene, channel, dice) -> {
                    for (int i = 0; i < x.length; i++) {
                        x[i] *= scene.times().seconds[i] >= atS ? factor : 1;
                    }
                },
                t -> {
                    t.put("atS", atS);
                    t.put("factor", factor);
                });
    }

    /**
     * A sensor that rattles: peaks on one side stretched (x + strength·x²/peak where x is above 0), and knocks, ringing
     * at 180–450 Hz with 4 ms decay, mostly where the signal is high; knocks per second as stated.
     */
    public static SensorFault rattle(double strength, double knocksPerSecond) {
        return new SensorFault(
                "rattle", (x, scene, channel, dice) -> rattle(x, scene, dice, strength, knocksPerSecond), t -> {
                    t.put("strength", strength);
                    t.put("knocksPerSecond", knocksPerSecond);
                });
    }

    private static void rattle(double[] x, Scene scene, Dice dice, double strength, double perSecond) {
        double rms = Levels.rms(x);
        double peak = 2.5 * rms;
        double[] t = scene.times().seconds;
        for (int i = 0; i < x.length; i++) {
            x[i] += x[i] > 0 ? strength * x[i] * x[i] / peak : 0;
        }
        int knocks = (int) Math.round(perSecond * t[t.length - 1]);
        for (int k = 0; k < knocks; k++) {
            int at = dice.between(0, x.length - 1);
            for (int look = 0; look < 200 && x[at] < rms; look++) {
                at = dice.between(0, x.length - 1);
            }
            double size = peak * dice.logUniform(1, 4);
            double hz = dice.uniform(180, 450);
            for (int i = at; i < x.length && t[i] - t[at] < 0.03; i++) {
                x[i] += size * Math.exp(-(t[i] - t[at]) / 0.004) * Math.cos(2 * Math.PI * hz * (t[i] - t[at]));
            }
        }
    }

    /** The recorder's input is set too high: values beyond this share of the signal's own peak are flat. */
    public static SensorFault clipping(double shareOfPeak) {
        return new SensorFault(
                "clipping",
                (x, scene, channel, dice) -> {
                    double peak = 0;
                    for (double v : x) {
                        peak = Math.max(peak, Math.abs(v));
                    }
                    for (int i = 0; i < x.length; i++) {
                        x[i] = Math.max(-peak * shareOfPeak, Math.min(peak * shareOfPeak, x[i]));
                    }
                },
                t -> t.put("shareOfPeak", shareOfPeak));
    }

    /**
     * Automatic gain: gain = (target / level)^hold, level followed with an attack and a release time; hold 1 brings every
     * level to the target, 0 does nothing.
     */
    public static SensorFault automaticGain(double target, double hold, double attackS, double releaseS) {
        return new SensorFault(
                "automatic-gain",
                (x, scene, channel, dice) -> {
                    double level = Levels.rms(x) + 1e-9;
                    double rate = scene.rateHz();
                    for (int i = 0; i < x.length; i++) {
                        double now = Math.abs(x[i]) * Math.PI / 2 / Math.sqrt(2); // mean size of a sine to its rms
                        level += (now - level) / (rate * (now > level ? attackS : releaseS));
                        x[i] *= Math.pow(target / Math.max(level, target / 100), hold);
                    }
                },
                t -> {
                    t.put("target", target);
                    t.put("hold", hold);
                    t.put("attackS", attackS);
                    t.put("releaseS", releaseS);
                });
    }

    /** Single samples flung to a multiple of the root mean square: a bad plug. */
    public static SensorFault spikes(double perSecond, double times) {
        return new SensorFault(
                "spikes",
                (x, scene, channel, dice) -> {
                    double rms = Levels.rms(x);
                    double[] t = scene.times().seconds;
                    for (int k = 0; k < perSecond * t[t.length - 1]; k++) {
                        x[dice.between(0, x.length - 1)] += (dice.chance(0.5) ? 1 : -1) * times * rms;
                    }
                },
                t -> {
                    t.put("perSecond", perSecond);
                    t.put("times", times);
                });
    }

    @Override
    public Place place() {
        return Place.SENSOR;
    }

    @Override
    public void apply(Scene scene, int channel, double[] x, Dice dice) {
        change.apply(x, scene, channel, dice);
    }

    @Override
    public Map<String, Object> truth() {
        return Map.copyOf(truth);
    }
}
