package evenblade.measure.lines;

import evenblade.input.recording.Series;
import evenblade.input.recording.TimeBase;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Follows known lines from stretch to stretch at the true times of the samples.
 *
 * <p>Of each half-overlapped Hann stretch c = Σ w x e^{−iωt} / Σ w, mean taken off, and q = 4|c|². Of a steady line with
 * amplitude A and noise f in one bin (mean of a²/2), q scatters about A² + 2f with variance 4A²f + 4f². Where it scatters
 * much more, the line comes and goes, moves, or is two; its error is then that of the mean of q: s / (2A√n).
 *
 * <p>A table's lines are also measured here, A² = mean q − 2f: an even grid, on which they are found, smooths high
 * frequencies (see {@link evenblade.measure.signal.EvenGrid}).
 */
final class StretchByStretch {
    /** A stretch that lost more of its rows than this is left out. */
    private static final double LEAST_ROWS = 0.7;
    /** So many stretches, spread over the recording, tell whether a line holds. */
    private static final int ENOUGH_TO_TELL = 24;
    /** A line isn't steady where q scatters by this much more than the noise makes it. */
    private static final double MUCH_MORE = 3;
    /** And by this share of its mean: an amplitude that is held within a seventh is steady enough. Our own choice. */
    private static final double LEAST_SCATTER = 0.3;

    private final TimeBase time;
    private final Series values;
    private final double stretchS;
    private final List<Part> parts;

    private StretchByStretch(TimeBase time, Series values, double stretchS) {
        this.time = time;
        this.values = values;
        this.stretchS = stretchS;
        this.parts = parts();
    }

    /** Rows of one stretch. */
    private record Part(double fromS, int first, int size) {}

    /** The lines found, each with whether it holds, strongest first. */
    static List<SteadyLine> follow(TimeBase time, Series values, double stretchS, List<LineSearch.Found> found) {
        StretchByStretch stretches = new StretchByStretch(time, values, stretchS);
        return found.stream()
                .map(stretches::followed)
                .sorted(Comparator.comparingDouble(SteadyLine::amplitude).reversed())
                .toList();
    }

    private List<Part> parts() {
        double lengthS = time.durationS();
        double hop = stretchS / 2;
        if (time.even() && lengthS > (ENOUGH_TO_TELL + 1) * hop) {
            hop = (lengthS - stretchS) / (ENOUGH_TO_TELL - 1);
        }
        List<Part> all = new ArrayList<>();
        double end = time.at(0) + lengthS + 0.5 / time.rateHz();
        for (double from = time.at(0); from + stretchS <= end; from += hop) {
            int first = time.firstFrom(from);
            int size = time.firstFrom(from + stretchS) - first;
            if (size >= LEAST_ROWS * stretchS * time.rateHz()) {
                all.add(new Part(from, first, size));
            }
        }
        return all;
    }

    private SteadyLine followed(LineSearch.Found found) {
        SteadyLine line = found.line();
        double[] squares = parts.stream()
                .mapToDouble(part -> square(line.frequencyHz(), part))
                .toArray();
        if (squares.length < 2) {
            return line;
        }
        double mean = 0;
        for (double square : squares) {
            mean += square / squares.length;
        }
        double variance = 0;
        for (double square : squares) {
            variance += (square - mean) * (square - mean) / (squares.length - 1);
        }
        double noise = found.noise();
        double expected = 4 * mean * noise + 4 * noise * noise;
        boolean steady =
                variance <= MUCH_MORE * MUCH_MORE * expected || variance <= LEAST_SCATTER * LEAST_SCATTER * mean * mean;
        double own = mean - 2 * noise;
        double amplitude = time.even() || own <= 0 ? line.amplitude() : Math.sqrt(own);
        double scatter = Math.sqrt(variance / squares.length) / (2 * amplitude);
        double error = steady ? line.standardError() : Math.max(line.standardError(), scatter);
        return new SteadyLine(line.frequencyHz(), amplitude, error, steady);
    }

    /** 4|c|² of one stretch. */
    private double square(double hz, Part part) {
        double[] samples = new double[part.size()];
        values.copyTo(part.first(), samples, samples.length);
        double mean = 0;
        for (double sample : samples) {
            mean += sample / samples.length;
        }
        Turning line = new Turning(2 * Math.PI * hz);
        Turning window = new Turning(2 * Math.PI / stretchS);
        double real = 0;
        double imaginary = 0;
        double weights = 0;
        for (int i = 0; i < samples.length; i++) {
            double t = time.at(part.first() + i) - part.fromS();
            line.to(t);
            window.to(t);
            double weight = 0.5 - 0.5 * window.cos;
            real += weight * (samples[i] - mean) * line.cos;
            imaginary += weight * (samples[i] - mean) * line.sin;
            weights += weight;
        }
        return 4 * (real * real + imaginary * imaginary) / (weights * weights);
    }

    /** Cosine and sine of an angle that grows with time; over even steps without working them out anew each time. */
    private final class Turning {
        /** Rounding grows with the steps: after so many it starts afresh. */
        private static final int FRESH_EVERY = 1024;

        private final double omega;
        private final double stepCos;
        private final double stepSin;
        private double cos;
        private double sin;
        private int steps;

        private Turning(double omega) {
            this.omega = omega;
            this.stepCos = Math.cos(omega / time.rateHz());
            this.stepSin = Math.sin(omega / time.rateHz());
        }

        private void to(double t) {
            if (time.even() && steps++ % FRESH_EVERY != 0) {
                double turned = cos * stepCos - sin * stepSin;
                sin = sin * stepCos + cos * stepSin;
                cos = turned;
            } else {
                cos = Math.cos(omega * t);
                sin = Math.sin(omega * t);
            }
        }
    }
}
