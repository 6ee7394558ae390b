package evenblade.keep.practice;

import evenblade.base.numeric.Phasor;
import evenblade.base.units.SignalUnit;
import evenblade.input.recording.Channel;
import evenblade.input.recording.ChannelQuality;
import evenblade.input.recording.FileHash;
import evenblade.input.recording.Recording;
import evenblade.input.recording.Series;
import evenblade.input.recording.Source;
import evenblade.input.recording.TimeBase;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One channel of an invented run: lines that keep step with the propeller, tones that don't, noise.
 * Samples are evaluated at the exact angle of every time stamp, even or jittered.
 *
 * @param speed propeller speed over the run
 * @param lines in step with the propeller; several at one order add as vectors
 * @param tones standing still
 * @param noise on every sample
 * @param seed of the noise
 */
public record SyntheticRun(SpeedProfile speed, List<Line> lines, List<Tone> tones, Noise noise, long seed) {
    private static final FileHash NO_FILE_HASH = FileHash.of("0".repeat(64));

    public SyntheticRun {
        lines = List.copyOf(lines);
        tones = List.copyOf(tones);
    }

    /** A silent run at the given speed. */
    public static SyntheticRun at(SpeedProfile speed) {
        return new SyntheticRun(speed, List.of(), List.of(), Noise.NONE, 0);
    }

    /** With a line of constant amplitude (peak) more. */
    public SyntheticRun withLine(double propellerOrder, double amplitude, double phaseDeg) {
        return withLine(Line.of(propellerOrder, amplitude, phaseDeg));
    }

    public SyntheticRun withLine(Line line) {
        return withLines(List.of(line));
    }

    public SyntheticRun withLines(List<Line> more) {
        List<Line> all = new ArrayList<>(lines);
        all.addAll(more);
        return new SyntheticRun(speed, all, tones, noise, seed);
    }

    /** Seen through a sensor that passes each frequency its own way; tones and noise stay. */
    public SyntheticRun through(Line.Response response) {
        List<Line> passed = lines.stream().map(line -> line.through(response)).toList();
        return new SyntheticRun(speed, passed, tones, noise, seed);
    }

    /** With a tone that stands still. */
    public SyntheticRun withTone(double frequencyHz, double amplitude) {
        List<Tone> all = new ArrayList<>(tones);
        all.add(new Tone(frequencyHz, amplitude, 0));
        return new SyntheticRun(speed, lines, all, noise, seed);
    }

    public SyntheticRun withNoise(Noise other) {
        return new SyntheticRun(speed, lines, tones, other, seed);
    }

    /** With white noise of the given standard deviation. */
    public SyntheticRun withNoise(double rms) {
        return withNoise(Noise.white(rms));
    }

    /**
     * With white noise that the strongest line stands over by the given number of decibels:
     * {@code A²/(2σ²) = 10^(dB/10)}, over the whole band, taken at the speed of the run's start.
     */
    public SyntheticRun withStrongestLineAbove(double noiseDb) {
        double strongest = lines.stream()
                .mapToDouble(
                        line -> line.law().at(speed.stretches().get(0).fromHz()).magnitude())
                .max()
                .orElseThrow(() -> new IllegalStateException("a run without lines has no strongest line"));
        return withNoise(strongest / Math.sqrt(2 * Math.pow(10, noiseDb / 10)));
    }

    public SyntheticRun withSeed(long other) {
        return new SyntheticRun(speed, lines, tones, noise, other);
    }

    /**
     * The true mean of a line over a stretch: what a fit in step with the propeller finds there. All lines
     * at that order are added as vectors.
     */
    public Phasor truth(double propellerOrder, double fromS, double toS) {
        Phasor sum = Phasor.ZERO;
        for (Line line : lines) {
            if (Math.abs(line.propellerOrder() - propellerOrder) <= 1e-6 * propellerOrder) {
                sum = sum.plus(mean(line, fromS, toS));
            }
        }
        return sum;
    }

    private Phasor mean(Line line, double fromS, double toS) {
        if (line.law() instanceof Line.Constant constant) {
            return constant.value();
        }
        int steps = Math.max(200, (int) Math.ceil((toS - fromS) * 50));
        Phasor sum = Phasor.ZERO;
        for (int i = 0; i < steps; i++) {
            double timeS = fromS + (toS - fromS) * (i + 0.5) / steps;
            sum = sum.plus(line.law().at(speed.propellerHzAt(timeS)));
        }
        return sum.times(1.0 / steps);
    }

    /** An even clock over the whole run. */
    public TimeBase evenClock(double rateHz) {
        return new TimeBase.Even(0, rateHz, (int) Math.floor(speed.durationS() * rateHz + 1e-9));
    }

    /** One sample per time. */
    public double[] samples(TimeBase time) {
        boolean needsSpeed = lines.stream().anyMatch(line -> !(line.law() instanceof Line.Constant));
        return new Turning(speed, time, needsSpeed).samples(this);
    }

    /** The run as one channel of a recording with an even clock. */
    public Recording recording(double rateHz) {
        return recording(evenClock(rateHz));
    }

    /** The run as one channel of a recording with the given stamps, in m/s². */
    public Recording recording(TimeBase time) {
        return recordingOf(time, List.of(channel("invented", SignalUnit.METRE_PER_SECOND_SQUARED, time)));
    }

    /** The run as a channel. */
    public Channel channel(String name, SignalUnit unit, TimeBase time) {
        return new Channel(name, unit, Series.of(samples(time)));
    }

    /** Several channels sampled at the same times as a recording that lies in no file. */
    public static Recording recordingOf(TimeBase time, List<Channel> channels) {
        Source source = new Source(
                Path.of("invented"),
                NO_FILE_HASH,
                "invented",
                false,
                time.rateHz(),
                time.durationS(),
                channels.stream().map(Channel::name).toList());
        List<ChannelQuality> quality =
                channels.stream().map(SyntheticRun::quality).toList();
        return new Recording(source, time, channels, quality, Optional.empty(), List.of());
    }

    private static ChannelQuality quality(Channel channel) {
        double sum = 0;
        double squares = 0;
        double peak = 0;
        int size = channel.values().size();
        for (int i = 0; i < size; i++) {
            double value = channel.values().at(i);
            sum += value;
            squares += value * value;
            peak = Math.max(peak, Math.abs(value));
        }
        double mean = sum / size;
        return new ChannelQuality(
                channel.name(), 0, 1, peak, mean, Math.sqrt(Math.max(0, squares / size - mean * mean)));
    }
}
