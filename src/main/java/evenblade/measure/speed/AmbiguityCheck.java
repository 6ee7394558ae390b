package evenblade.measure.speed;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Listed;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Quoted;
import evenblade.base.fact.Value;
import java.util.ArrayList;
import java.util.List;

/**
 * Other speeds that explain the lines seen as well as the one chosen, because too few lines are seen.
 *
 * @param propellerHz mean speeds of the rivals
 * @param chosenHz mean of the path chosen
 * @param line the strongest line seen, as read on the chosen path
 */
record AmbiguityCheck(List<Double> propellerHz, double chosenHz, Comb.ExpectedLine line) {
    /** Share of the chosen path's evidence from which on another is a rival. */
    private static final double AS_GOOD = 0.92;
    /** With no more lines than this, what is absent proves nothing: the rest may be too weak to see. */
    private static final int FEW_LINES = 1;
    /** Mean evidence below which a line counts as absent. */
    private static final double PRESENT = 1.0;
    /** What an absent line costs: much for one that most machines show, little for another. */
    private static final double ABSENT_MAIN = 1.5;

    private static final double ABSENT_OTHER = 0.4;

    AmbiguityCheck {
        propellerHz = List.copyOf(propellerHz);
    }

    static AmbiguityCheck of(WhitenedSpectrogram frames, Comb comb, PathSearch.Path path, SpeedPrior expectation) {
        double mean = java.util.Arrays.stream(path.hz()).average().orElseThrow();
        boolean few = present(frames, comb, path, 1) <= FEW_LINES;
        double chosen = few ? seen(frames, comb, path, 1) : explained(frames, comb, path, 1);
        Comb.ExpectedLine strongest = comb.teeth().get(0);
        double most = -1;
        for (Comb.ExpectedLine tooth : comb.teeth()) {
            double seen = meanEvidence(frames, path, tooth.order());
            if (seen > most) {
                most = seen;
                strongest = tooth;
            }
        }
        List<Double> rivals = new ArrayList<>();
        for (Comb.ExpectedLine other : comb.teeth()) {
            double scale = strongest.order() / other.order();
            double hz = mean * scale;
            boolean elsewhere = Math.abs(scale - 1) > 0.01;
            if (elsewhere
                    && hz >= expectation.fromHz()
                    && hz <= expectation.toHz()
                    && (few ? seen(frames, comb, path, scale) : explained(frames, comb, path, scale))
                            > AS_GOOD * chosen) {
                rivals.add(hz);
            }
        }
        return new AmbiguityCheck(rivals, mean, strongest);
    }

    boolean undecided() {
        return !propellerHz.isEmpty();
    }

    Fact fact(double ratio) {
        List<Value> others = propellerHz.stream()
                .<Value>map(hz -> Measure.ENGINE_RPM.of(60 * hz * ratio))
                .toList();
        return Fact.of(
                SpeedFact.AMBIGUOUS,
                Measure.ENGINE_RPM.of(60 * chosenHz * ratio),
                Measure.FREQUENCY.of(chosenHz * line.order()),
                new Quoted(line.line().name()),
                new Listed(others));
    }

    private static long present(WhitenedSpectrogram frames, Comb comb, PathSearch.Path path, double scale) {
        return comb.teeth().stream()
                .filter(tooth -> meanEvidence(frames, path, tooth.order() * scale) > PRESENT)
                .count();
    }

    /** Evidence of the lines that are there, whatever is absent. */
    private static double seen(WhitenedSpectrogram frames, Comb comb, PathSearch.Path path, double scale) {
        return comb.teeth().stream()
                .mapToDouble(tooth -> meanEvidence(frames, path, tooth.order() * scale))
                .filter(evidence -> evidence > PRESENT)
                .sum();
    }

    /** How well the comb explains the frames of a path, absent lines counted against it. */
    static double explained(WhitenedSpectrogram frames, Comb comb, PathSearch.Path path, double scale) {
        double sum = 0;
        for (Comb.ExpectedLine tooth : comb.teeth()) {
            double seen = meanEvidence(frames, path, tooth.order() * scale);
            if (Double.isNaN(seen)) {
                continue;
            }
            sum += seen > PRESENT ? seen : -(tooth.main() ? ABSENT_MAIN : ABSENT_OTHER);
        }
        return sum;
    }

    /** Mean over frames and channels; not a number where the line is never in range. */
    private static double meanEvidence(WhitenedSpectrogram frames, PathSearch.Path path, double order) {
        double sum = 0;
        int n = 0;
        for (int i = 0; i < path.hz().length; i++) {
            double frequency = order * path.hz()[i];
            if (frames.inRange(frequency)) {
                for (int c = 0; c < frames.channels(); c++) {
                    sum += frames.evidence(c, path.frame()[i], frequency);
                    n++;
                }
            }
        }
        return sum / n;
    }
}
