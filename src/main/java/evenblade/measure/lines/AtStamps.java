package evenblade.measure.lines;

import evenblade.input.recording.Series;
import evenblade.input.recording.TimeBase;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Amplitudes of known lines at the true stamps of a table: an even grid smooths high frequencies (see {@link
 * evenblade.measure.signal.EvenGrid}), so lines are found on it and measured here.
 *
 * <p>Of each half-overlapped Hann stretch c = Σ w x e^{−iωt} / Σ w at the stamps, mean taken off; A² = 4 mean|c|² less
 * the noise in one bin.
 */
final class AtStamps {
    /** A stretch that lost more of its rows than this is left out. */
    private static final double LEAST_ROWS = 0.7;

    private final TimeBase time;
    private final Series values;
    private final double stretchS;

    private AtStamps(TimeBase time, Series values, double stretchS) {
        this.time = time;
        this.values = values;
        this.stretchS = stretchS;
    }

    /** The same lines with the amplitudes at the stamps, strongest first. */
    static List<SteadyLine> amplitudes(
            TimeBase time, Series values, double stretchS, List<LineSearch.Found> found) {
        AtStamps at = new AtStamps(time, values, stretchS);
        return found.stream()
                .map(at::measured)
                .sorted(Comparator.comparingDouble(SteadyLine::amplitude).reversed())
                .toList();
    }

    private SteadyLine measured(LineSearch.Found found) {
        SteadyLine line = found.line();
        List<Double> squares = new ArrayList<>();
        double end = time.at(time.size() - 1);
        for (double from = time.at(0); from + stretchS <= end + 1 / time.rateHz(); from += stretchS / 2) {
            int first = time.firstFrom(from);
            int last = time.firstFrom(from + stretchS);
            if (last - first >= LEAST_ROWS * stretchS * time.rateHz()) {
                squares.add(square(line.frequencyHz(), from, first, last));
            }
        }
        double square = squares.stream().mapToDouble(each -> each).average().orElse(0) - 2 * found.noise();
        return square > 0 ? new SteadyLine(line.frequencyHz(), Math.sqrt(square), line.standardError()) : line;
    }

    /** 4|c|² of one stretch. */
    private double square(double hz, double from, int first, int last) {
        double mean = 0;
        for (int i = first; i < last; i++) {
            mean += values.at(i);
        }
        mean /= last - first;
        double real = 0;
        double imaginary = 0;
        double weights = 0;
        for (int i = first; i < last; i++) {
            double t = time.at(i) - from;
            double weight = 0.5 - 0.5 * Math.cos(2 * Math.PI * t / stretchS);
            double angle = 2 * Math.PI * hz * t;
            real += weight * (values.at(i) - mean) * Math.cos(angle);
            imaginary += weight * (values.at(i) - mean) * Math.sin(angle);
            weights += weight;
        }
        return 4 * (real * real + imaginary * imaginary) / (weights * weights);
    }
}
