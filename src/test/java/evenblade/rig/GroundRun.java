package evenblade.rig;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;

/** One made run: samples of every channel, what the file's clock says, and the truth. */
public final class GroundRun {
    private final Sampling sampling;
    private final List<Sensor> sensors;
    private final double[] trueTimes;
    private final double[][] channels;
    private final Truth truth;

    GroundRun(Sampling sampling, List<Sensor> sensors, double[] trueTimes, double[][] channels, Truth truth) {
        this.sampling = sampling;
        this.sensors = sensors;
        this.trueTimes = trueTimes;
        this.channels = channels;
        this.truth = truth;
    }

    public Truth truth() {
        return truth;
    }

    public Machine machine() {
        return truth.machine();
    }

    public List<Sensor> sensors() {
        return sensors;
    }

    public double rateHz() {
        return sampling.rateHz();
    }

    /** A copy of a channel's values in its unit, clipped at its full scale. */
    public double[] samples(int channel) {
        double limit = sensors.get(channel).fullScale();
        return Arrays.stream(channels[channel])
                .map(v -> Math.max(-limit, Math.min(limit, v)))
                .toArray();
    }

    /** Share of a channel's samples that the recorder clips. */
    public double clippedShare(int channel) {
        double limit = sensors.get(channel).fullScale();
        return Arrays.stream(channels[channel])
                        .filter(v -> Math.abs(v) >= limit)
                        .count()
                / (double) trueTimes.length;
    }

    public double[] trueTimes() {
        return trueTimes.clone();
    }

    /** What a CSV file says as times. */
    public double[] stamps() {
        return sampling.stamps(trueTimes);
    }

    /** The file's clock at a true time. */
    public double stampS(double trueTimeS) {
        return sampling.stamp(trueTimeS);
    }

    /** PCM 16 or 24 bit, or 32 bit float; value 1 in the file is the channel's full scale. */
    public Path writeWav(Path file, WavFile.Format format) throws IOException {
        double[][] scaled = new double[channels.length][];
        for (int c = 0; c < channels.length; c++) {
            double scale = 1 / sensors.get(c).fullScale();
            scaled[c] = Arrays.stream(samples(c)).map(v -> v * scale).toArray();
        }
        return WavFile.write(file, sampling.rateHz(), scaled, format);
    }

    public Path writeWav(Path file) throws IOException {
        return writeWav(file, WavFile.Format.PCM24);
    }

    /** Seconds and one column per channel, heading "name (unit)"; comma and point. */
    public Path writeCsv(Path file) throws IOException {
        double[][] values = new double[channels.length][];
        for (int c = 0; c < channels.length; c++) {
            values[c] = samples(c);
        }
        return CsvFile.write(file, stamps(), sensors, values, sampling.repeats());
    }

    public Path writeInstallation(Path file) throws IOException {
        return Files.writeString(file, machine().installationJson());
    }

    public Path writeTruth(Path file) throws IOException {
        return Files.writeString(file, truth.json());
    }
}
