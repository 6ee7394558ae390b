package evenblade.keep.practice;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/**
 * A laptop beside the aircraft: one channel, no calibration, a first-order high-pass that takes most of
 * propeller 1× away, wind and hiss.
 *
 * @param rateHz samples per second
 * @param cornerHz of the high-pass
 * @param level share of full scale that sound of strength 1 reaches far above the corner
 * @param noise in shares of full scale
 */
public record LaptopMicrophone(int rateHz, double cornerHz, double level, Noise noise) implements Sensor {
    /** 44.1 kHz, 80 Hz corner, a quiet level. */
    public static LaptopMicrophone usual() {
        return new LaptopMicrophone(44_100, 80, 0.05, new Noise(0.0015, 0.0025));
    }

    @Override
    public String description() {
        return "laptop microphone beside the aircraft, no calibration";
    }

    @Override
    public String extension() {
        return ".wav";
    }

    @Override
    public List<TrueChannel> record(PracticeRun run, Path file) throws IOException {
        SyntheticRun heard = run.heard(cornerHz).through(Line.converter(rateHz));
        SyntheticRun scaled = SyntheticRun.at(heard.speed())
                .withLines(heard.lines().stream().map(line -> line.times(level)).toList())
                .withNoise(noise)
                .withSeed(heard.seed());
        double[] samples = scaled.samples(scaled.evenClock(rateHz));
        new WavFile(rateHz, 16, 1, Invention.NOTE).write(file, List.of(samples));
        return List.of(new TrueChannel(1, "sound", "FS", 1, Sensor.beyond(samples, 1), scaled));
    }
}
