package evenblade.rig;

import java.util.Map;

/**
 * Sounds from outside that are steady tones in series: mains hum. A level is relative: root mean square of the sound over
 * that of the machine's lines on the same channel; behind a standing machine it is absolute (unit of the channel).
 */
public final class Sound {
    private Sound() {}

    /**
     * Mains hum with harmonics 1…20 at a grid frequency that wanders slowly by ±0.05 Hz (time constant 20 s), even
     * harmonics as strong as odd ones, falling as 1/k^0.7 with random sizes. Picked up by wire: the sensor's own
     * high-pass does not touch it.
     */
    public static Disturbance hum(double gridHz, double level) {
        return new Hum(gridHz, level);
    }

    private record Hum(double gridHz, double level) implements Disturbance {
        private static final int HARMONICS = 20;
        private static final double STEP_S = 0.05;
        private static final double DEVIATION_HZ = 0.02; // bounded at 2.5 deviations = 0.05 Hz

        @Override
        public Place place() {
            return Place.OUTSIDE;
        }

        @Override
        public void apply(Scene scene, int channel, double[] x, Dice dice) {
            double[] times = scene.times().seconds;
            int points = (int) (times[times.length - 1] / STEP_S) + 3;
            double[] swing = Wander.smooth(points, STEP_S, 10, scene.dice().fork(7_001));
            double[] turns = new double[points];
            for (int i = 1; i < points; i++) {
                double off = Math.max(-2.5, Math.min(2.5, swing[i])) * DEVIATION_HZ;
                turns[i] = turns[i - 1] + (gridHz + off) * STEP_S;
            }
            Series angle = new Series(STEP_S, turns);
            double[] size = new double[HARMONICS];
            double[] phase = new double[HARMONICS];
            double power = 0;
            for (int k = 0; k < HARMONICS; k++) {
                size[k] = dice.logUniform(0.3, 1) * Math.pow(k + 1, -0.7);
                phase[k] = dice.uniform(0, 1);
                power += size[k] * size[k] / 2;
            }
            double factor = Levels.factor(x, level, Math.sqrt(power));
            for (int i = 0; i < x.length; i++) {
                double t = angle.at(times[i]);
                for (int k = 0; k < HARMONICS && (k + 1) * gridHz < 0.5 * scene.rateHz(); k++) {
                    x[i] += factor * size[k] * Sines.cos((k + 1) * t + phase[k]);
                }
            }
        }

        @Override
        public Map<String, Object> truth() {
            return Map.of("kind", "mains-hum", "gridHz", gridHz, "level", level);
        }
    }
}
