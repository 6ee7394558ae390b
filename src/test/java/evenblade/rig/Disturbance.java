package evenblade.rig;

import java.util.Map;

/** Something that isn't the machine's own shaking: from outside, in the sensor, or in the recorder. */
public interface Disturbance {
    /** Outside: adds to what the sensor feels, before its noise. Sensor: changes what it hands on, after all else. */
    enum Place {
        OUTSIDE,
        SENSOR
    }

    Place place();

    /** Changes the samples of one channel (marks are left alone by the caller). */
    void apply(Scene scene, int channel, double[] x, Dice dice);

    /** What was done, for the truth: "kind" and its numbers. */
    Map<String, Object> truth();

    /**
     * Where it happens.
     *
     * @param dice the run's dice, the same for all channels: what is common to the channels is drawn from forks of them
     */
    record Scene(Machine machine, SpeedTrack track, Sensor[] sensors, Times times, double rateHz, Dice dice) {}

    /** The true moments of the samples. */
    final class Times {
        final double[] seconds;

        Times(double[] seconds) {
            this.seconds = seconds;
        }
    }
}
