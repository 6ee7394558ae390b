package evenblade.measure.speed;

import evenblade.base.units.SignalUnit;
import evenblade.input.recording.Channel;
import evenblade.input.recording.Recording;
import evenblade.input.recording.Series;
import evenblade.input.recording.Source;
import evenblade.input.recording.Stretch;
import evenblade.input.recording.TimeBase;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;

/**
 * Spectra made by hand, with lines where a test puts them and nothing between; and recordings of a few waves. Each line is a
 * parabola that falls to nothing one resolution beside its place.
 */
final class HandMadeLines {
    /** Of frames of 1.5 s. */
    static final double RESOLUTION_HZ = 1 / 1.5;
    /** From which evidence on a line stands. */
    private static final double STANDS = 0.7;

    /** Kept below half of its rate by a filter, so that nothing folds; 2 to 600 Hz are seen. */
    private static final WhitenedSpectrogram FRAMES = nothing();

    private HandMadeLines() {}

    private static WhitenedSpectrogram nothing() {
        Recording silence = recording(1200, 2400, 1.5, t -> 0);
        return WhitenedSpectrogram.of(silence, silence.channels(), 600, 1.5);
    }

    /**
     * @param meanHz propeller speed of the path
     * @param lines pairs of hertz and evidence
     */
    static WhitenedLines of(double meanHz, double... lines) {
        double firstLn = Math.log(FRAMES.lowestHz());
        float[] evidence = new float[(int) Math.ceil((Math.log(600) - firstLn) / WhitenedLines.STEP)];
        for (int i = 0; i < evidence.length; i++) {
            double hz = Math.exp(firstLn + i * WhitenedLines.STEP);
            for (int k = 0; k < lines.length; k += 2) {
                double off = (hz - lines[k]) / RESOLUTION_HZ;
                evidence[i] = Math.max(evidence[i], (float) (lines[k + 1] * (1 - off * off)));
            }
        }
        return new WhitenedLines(FRAMES, meanHz, firstLn, evidence, STANDS);
    }

    /** Lines at multiples of a speed: pairs of order and evidence. */
    static double[] at(double hz, double... orders) {
        return IntStream.range(0, orders.length)
                .mapToDouble(i -> i % 2 == 0 ? hz * orders[i] : orders[i])
                .toArray();
    }

    static double[] together(double[]... lists) {
        return java.util.Arrays.stream(lists)
                .flatMapToDouble(java.util.Arrays::stream)
                .toArray();
    }

    /**
     * @param sourceRateHz rate at which it was taken; higher than its own where it was brought down
     */
    static Recording recording(double rateHz, double sourceRateHz, double seconds, DoubleUnaryOperator values) {
        int size = (int) Math.round(rateHz * seconds);
        double[] x = IntStream.range(0, size)
                .mapToDouble(i -> values.applyAsDouble(i / rateHz))
                .toArray();
        Channel channel = new Channel("x", SignalUnit.METRE_PER_SECOND_SQUARED, Series.of(x));
        return new Recording(
                new Source(Path.of("x.wav"), "0", "wav", false, sourceRateHz, seconds, List.of("x")),
                new TimeBase.Even(0, rateHz, size),
                List.of(channel),
                List.of(),
                Optional.empty(),
                List.of(),
                List.of(new Stretch(0, seconds)));
    }

    /** Waves in noise; the chance is seeded. */
    static Recording noisy(double rateHz, double seconds, double noise, DoubleUnaryOperator values) {
        Random dice = new Random(9);
        return recording(rateHz, rateHz, seconds, t -> values.applyAsDouble(t) + noise * dice.nextGaussian());
    }

    static WhitenedSpectrogram frames(Recording recording, double upToHz) {
        return WhitenedSpectrogram.of(recording, recording.channels(), upToHz);
    }

    /** Cosines: triples of amplitude, multiple and angle, of an angle in turns. */
    static double waves(double turns, double... waves) {
        double sum = 0;
        for (int k = 0; k < waves.length; k += 3) {
            sum += waves[k] * Math.cos(2 * Math.PI * waves[k + 1] * turns + waves[k + 2]);
        }
        return sum;
    }
}
