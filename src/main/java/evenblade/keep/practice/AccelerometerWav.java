package evenblade.keep.practice;

import evenblade.input.recording.TimeBase;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Accelerometers through an audio interface, with a once-per-revolution mark of the propeller on the last
 * channel where there is one.
 *
 * @param rateHz frames per second
 * @param bits 16 or 24
 * @param fullScale m/s² at full scale
 * @param axes one channel each, in this order
 * @param mark the mark, in shares of full scale
 */
public record AccelerometerWav(int rateHz, int bits, double fullScale, List<SensorAxis> axes, Optional<MarkPulses> mark)
        implements Sensor {
    private static final double MARK_LEVEL = 0.7; // of full scale

    public AccelerometerWav {
        axes = List.copyOf(axes);
    }

    /** One direction and a clean mark at 4 kHz, 16 bit, 50 m/s² at full scale. */
    public static AccelerometerWav oneAxisWithMark(SensorAxis axis) {
        return new AccelerometerWav(
                4000, 16, 50, List.of(axis), Optional.of(new MarkPulses(MARK_LEVEL, 0.05, 0, 0, 0.002, 1)));
    }

    /** All three directions and a clean mark, 16 bit, 50 m/s² at full scale. */
    public static AccelerometerWav threeAxesWithMark(int rateHz) {
        return new AccelerometerWav(
                rateHz,
                16,
                50,
                List.of(SensorAxis.values()),
                oneAxisWithMark(SensorAxis.UP).mark());
    }

    @Override
    public String description() {
        return "accelerometer on the engine through an audio interface"
                + (mark.isPresent() ? ", mark of the propeller on the last channel" : "");
    }

    @Override
    public String extension() {
        return ".wav";
    }

    @Override
    public List<TrueChannel> record(PracticeRun run, Path file) throws IOException {
        SpeedProfile speed = run.trueSpeed();
        TimeBase time = SyntheticRun.at(speed).evenClock(rateHz);
        List<double[]> channels = new ArrayList<>();
        List<TrueChannel> truth = new ArrayList<>();
        for (SensorAxis axis : axes) {
            SyntheticRun felt = run.felt(axis).through(Line.converter(rateHz));
            double[] samples = felt.samples(time);
            channels.add(samples);
            truth.add(new TrueChannel(
                    channels.size(), axis.word(), "m/s2", fullScale, Sensor.beyond(samples, fullScale), felt));
        }
        if (mark.isPresent()) {
            double[] pulses = mark.get().samples(speed, time);
            for (int i = 0; i < pulses.length; i++) {
                pulses[i] *= fullScale;
            }
            channels.add(pulses);
        }
        new WavFile(rateHz, bits, fullScale, Invention.NOTE).write(file, channels);
        return truth;
    }
}
