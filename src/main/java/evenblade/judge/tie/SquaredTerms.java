package evenblade.judge.tie;

import evenblade.base.numeric.LinearDesign;
import evenblade.base.numeric.Phasor;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/**
 * Whether amplitudes alone leave one answer. Squared, the tie is linear in quantities from which |c|, |k| and |q|
 * follow: |c + kT + qP|² = |c|² + |k|²|T|² + 2Re(c̄kT) + |q|²|P|² + 2Re(c̄qP) + 2Re(k̄T̄qP). Its terms 1, |T|², Re T, Im T
 * (with pitch also |P|², Re P, Im P, Re T̄P, Im T̄P) must be independent over the runs. Where all T, or all P, lie on one
 * line through zero (with two blades they always do), the place along that line stands for both parts.
 */
final class SquaredTerms {
    private final List<Phasor> track;
    private final List<Phasor> angles;
    private final boolean trackOnLine;
    private final boolean anglesOnLine;

    private SquaredTerms(List<TieRun> runs, boolean pitch) {
        track = scaled(runs, TieRun::trackMm);
        angles = pitch ? scaled(runs, r -> r.pitchDeg().orElseThrow()) : List.of();
        trackOnLine = onLine(track);
        anglesOnLine = pitch && onLine(angles);
    }

    static boolean tellApart(List<TieRun> runs, boolean pitch) {
        SquaredTerms terms = new SquaredTerms(runs, pitch);
        double[][] rows = terms.rows();
        return LinearDesign.of(rows).rank() == rows[0].length;
    }

    /** How many terms there are with pitch, and so how many runs it takes at least. */
    static int number(List<TieRun> runs) {
        return runs.stream().allMatch(r -> r.pitchDeg().isPresent())
                ? new SquaredTerms(runs, true).rows()[0].length
                : new SquaredTerms(runs, false).rows()[0].length;
    }

    private double[][] rows() {
        double[][] rows = new double[track.size()][];
        Phasor trackLine = direction(track);
        Phasor anglesLine = direction(angles);
        for (int r = 0; r < rows.length; r++) {
            List<Double> row = new ArrayList<>(List.of(1.0));
            add(row, track.get(r), trackOnLine, trackLine);
            if (!angles.isEmpty()) {
                add(row, angles.get(r), anglesOnLine, anglesLine);
                if (trackOnLine && anglesOnLine) {
                    row.add(along(track.get(r), trackLine) * along(angles.get(r), anglesLine));
                } else {
                    Phasor t = track.get(r);
                    Phasor p = angles.get(r);
                    row.add(t.re() * p.re() + t.im() * p.im());
                    row.add(t.re() * p.im() - t.im() * p.re());
                }
            }
            rows[r] = row.stream().mapToDouble(Double::doubleValue).toArray();
        }
        return rows;
    }

    private static void add(List<Double> row, Phasor value, boolean onLine, Phasor line) {
        row.add(value.re() * value.re() + value.im() * value.im());
        if (onLine) {
            row.add(along(value, line));
        } else {
            row.add(value.re());
            row.add(value.im());
        }
    }

    private static double along(Phasor value, Phasor line) {
        return value.re() * line.re() + value.im() * line.im();
    }

    /** The largest; of length 1, since all are scaled by it, or zero. */
    private static Phasor direction(List<Phasor> values) {
        return values.stream()
                .reduce((a, b) -> b.magnitude() > a.magnitude() ? b : a)
                .orElse(Phasor.ZERO);
    }

    private static List<Phasor> scaled(List<TieRun> runs, Function<TieRun, Phasor> part) {
        List<Phasor> values = runs.stream().map(part).toList();
        double largest = direction(values).magnitude();
        return largest == 0
                ? values
                : values.stream().map(v -> v.times(1 / largest)).toList();
    }

    private static boolean onLine(List<Phasor> values) {
        double[][] places =
                values.stream().map(v -> new double[] {v.re(), v.im()}).toArray(double[][]::new);
        return LinearDesign.of(places).rank() < 2;
    }
}
