package evenblade.keep.practice;

import evenblade.base.numeric.Phasor;
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

    /** What a microphone of unit sensitivity hears, high-pass and all, without noise of its own. */
    static SyntheticRun heard(PracticeRun run, double cornerHz) {
        return SyntheticRun.at(run.trueSpeed())
                .withLines(Sound.of(run.machine()).stream()
                        .map(line -> line.through(highPass(cornerHz)))
                        .toList())
                .withSeed(Seeds.part(run.seed(), SensorAxis.values().length));
    }

    /**
     * A first-order high-pass, {@code H = j(f/f_c) / (1 + j(f/f_c))}: what a laptop microphone does to low
     * tones.
     *
     * @param cornerHz where it passes 1/√2
     */
    static Line.Response highPass(double cornerHz) {
        return frequencyHz -> {
            double ratio = frequencyHz / cornerHz;
            // j·r/(1 + j·r), made real below: (r² + j·r)/(1 + r²).
            double below = 1 + ratio * ratio;
            return new Phasor(ratio * ratio / below, ratio / below);
        };
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
        SyntheticRun heard = heard(run, cornerHz).through(Line.converter(rateHz));
        SyntheticRun scaled = SyntheticRun.at(heard.speed())
                .withLines(heard.lines().stream().map(line -> line.times(level)).toList())
                .withNoise(noise)
                .withSeed(heard.seed());
        double[] samples = scaled.samples(scaled.evenClock(rateHz));
        new WavFile(rateHz, 16, 1, Invention.NOTE).write(file, List.of(samples));
        return List.of(new TrueChannel(1, "sound", "FS", 1, Sensor.beyond(samples, 1), scaled));
    }
}
