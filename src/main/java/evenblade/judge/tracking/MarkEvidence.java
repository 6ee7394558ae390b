package evenblade.judge.tracking;

import evenblade.base.numeric.LinearDesign;
import evenblade.base.units.Length;
import java.util.ArrayList;
import java.util.List;

/**
 * How well the marks fit with one set of things being out: some blades, some hub positions, perhaps one reading that
 * slipped, and nothing else.
 *
 * <p>Each reading is y = m + Σ d + ε. The session's zero m is anything; each d of the set is drawn from a normal
 * distribution about nothing; ε is normal with f times the stated error, and f itself is not taken on trust: it has the
 * scaled inverse χ² distribution that {@link ReadingScatter#STATED_WORTH} readings would have shown. The evidence is the
 * probability density of the marks, over all d and f (Gelman et al., <i>Bayesian Data Analysis</i>, chapters 7 and 14;
 * from memory). It is summed over a grid of f and over two sizes of d.
 */
final class MarkEvidence {
    /** Typical size of what is out: a shim's worth, and for gross faults at least this. Ours, in mm. */
    private static final double SMALL_MM = 1.5;

    private static final double LARGE_MM = 6; // past common practice's most for track; no source

    /** Typical size of a slip on a rule: 3/16 in and thereabouts. Ours, in mm. */
    private static final double SLIP_MM = 5;

    /** Factors on the stated error that are weighed: from less than half to eleven times, in steps of a quarter. */
    private static final double LEAST_FACTOR = 0.4;

    private static final double FACTOR_STEP = 1.25; // ours: two decibels
    private static final int FACTORS = 16; // up to 28 times the stated error

    private final int positions;
    private final int blades;
    private final int zeros;
    private final List<int[]> places = new ArrayList<>();
    private final double[][] products;
    private final double[] withMarks;
    private final double marksSquared;
    private final double largeMm;

    MarkEvidence(List<TrackingSession> sessions, List<String> names, List<Double> errorsMm) {
        positions = sessions.get(0).layout().positions();
        blades = names.size();
        zeros = sessions.size();
        List<double[]> marks = new ArrayList<>();
        double largest = 0;
        for (int s = 0; s < sessions.size(); s++) {
            largest = Math.max(largest, sessions.get(s).spreadMm());
            for (int p = 0; p < positions; p++) {
                for (Length reading : sessions.get(s).readings().get(p)) {
                    places.add(new int[] {
                        s, p, names.indexOf(sessions.get(s).layout().blades().get(p))
                    });
                    marks.add(new double[] {reading.millimetres(), 1 / errorsMm.get(s)});
                }
            }
        }
        largeMm = Math.max(LARGE_MM, largest / 2);
        int readings = places.size();
        double[][] columns = new double[positions + blades + readings][readings];
        double[] y = new double[readings];
        for (int r = 0; r < readings; r++) {
            double weight = marks.get(r)[1];
            columns[places.get(r)[1]][r] = weight;
            columns[positions + places.get(r)[2]][r] = weight;
            columns[positions + blades + r][r] = weight;
            y[r] = marks.get(r)[0] * weight;
        }
        for (double[] column : columns) {
            takeZerosOut(column);
        }
        takeZerosOut(y);
        products = new double[columns.length][columns.length];
        withMarks = new double[columns.length];
        for (int i = 0; i < columns.length; i++) {
            for (int j = 0; j <= i; j++) {
                products[i][j] = LinearDesign.dot(columns[i], columns[j]);
                products[j][i] = products[i][j];
            }
            withMarks[i] = LinearDesign.dot(columns[i], y);
        }
        marksSquared = LinearDesign.dot(y, y);
    }

    int positions() {
        return positions;
    }

    int blades() {
        return blades;
    }

    int readings() {
        return places.size();
    }

    /** How many differences the readings tell: all but one in each session. */
    int told() {
        return readings() - zeros;
    }

    /** Session and position of a reading, both from 0. */
    int[] place(int reading) {
        return places.get(reading);
    }

    /** Natural logarithm of the evidence, less a constant that is the same for every hypothesis. */
    double log(GroupHypothesis hypothesis) {
        int[] columns = hypothesis.columns(positions, blades);
        double small = log(columns, SMALL_MM);
        double large = log(columns, largeMm);
        double more = Math.max(small, large);
        return more + Math.log((Math.exp(small - more) + Math.exp(large - more)) / 2);
    }

    /** Readings of one session have one weight, so its zero is their plain mean. */
    private void takeZerosOut(double[] column) {
        double[] sum = new double[zeros];
        int[] count = new int[zeros];
        for (int r = 0; r < column.length; r++) {
            sum[places.get(r)[0]] += column[r];
            count[places.get(r)[0]]++;
        }
        for (int r = 0; r < column.length; r++) {
            column[r] -= sum[places.get(r)[0]] / count[places.get(r)[0]];
        }
    }

    private double log(int[] columns, double sizeMm) {
        double[] each = new double[FACTORS];
        double most = Double.NEGATIVE_INFINITY;
        double factor = LEAST_FACTOR;
        for (int i = 0; i < FACTORS; i++) {
            double worth = ReadingScatter.STATED_WORTH;
            double prior = -worth * Math.log(factor) - worth / (2 * factor * factor);
            each[i] = prior + given(columns, sizeMm, factor);
            most = Math.max(most, each[i]);
            factor *= FACTOR_STEP;
        }
        double sum = 0;
        for (double one : each) {
            sum += Math.exp(one - most);
        }
        return most + Math.log(sum);
    }

    /** With the factor known: normal marks whose covariance is f²·I + Σ size²·xxᵀ, by its inverse and determinant. */
    private double given(int[] columns, double sizeMm, double factor) {
        double variance = factor * factor;
        int k = columns.length;
        double[][] root = new double[k][k];
        double[] solved = new double[k];
        double log = -(readings() - zeros) * Math.log(factor) - marksSquared / (2 * variance);
        for (int i = 0; i < k; i++) {
            double size = columns[i] >= positions + blades ? SLIP_MM : sizeMm;
            for (int j = 0; j <= i; j++) {
                double value = products[columns[i]][columns[j]] / variance + (i == j ? 1 / (size * size) : 0);
                for (int l = 0; l < j; l++) {
                    value -= root[i][l] * root[j][l];
                }
                root[i][j] = i == j ? Math.sqrt(value) : value / root[j][j];
            }
            double right = withMarks[columns[i]] / variance;
            for (int l = 0; l < i; l++) {
                right -= root[i][l] * solved[l];
            }
            solved[i] = right / root[i][i];
            log += solved[i] * solved[i] / 2 - Math.log(root[i][i]) - Math.log(size);
        }
        return log;
    }
}
