package evenblade.base.numeric;

import java.util.Arrays;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.SingularValueDecomposition;

/**
 * The design of a linear model y = X·β + ε, judged before any y is known: its rank, which combinations of
 * parameters it can estimate, and how precisely.
 *
 * <p>X may lack rank. A combination cᵀβ is estimable when c lies in the row space of X; its variance is then
 * σ²·cᵀ(XᵀX)⁺c whatever constraint one adds to make β unique (Searle, <em>Linear Models</em>, 1971, section 5.4;
 * from memory). Columns are brought to equal length before the singular value decomposition, so the rank doesn't
 * depend on the units of the parameters.
 *
 * <p>Left out: weights (scale the rows by 1/σ yourself) and designs too large to be held as one dense matrix.
 */
public final class LinearDesign {
    /** Singular values below this share of the largest count as zero. */
    public static final double RANK_TOLERANCE = 1e-11;

    /** A combination is estimable when no more than this share of its length lies outside the row space. */
    private static final double ROW_SPACE_TOLERANCE = 1e-8;

    private final double[][] rows;
    private final double[] columnScale;
    private final int rank;
    /** Left singular vectors that count, one array each. */
    private final double[][] left;
    /** Right singular vectors that count, one array each, of the scaled columns. */
    private final double[][] right;

    private final double[] singular;

    private LinearDesign(double[][] rows) {
        this.rows = rows;
        int columns = rows[0].length;
        columnScale = new double[columns];
        for (int j = 0; j < columns; j++) {
            double squares = 0;
            for (double[] row : rows) {
                squares += row[j] * row[j];
            }
            columnScale[j] = squares > 0 ? Math.sqrt(squares) : 1;
        }
        RealMatrix scaled = new Array2DRowRealMatrix(rows.length, columns);
        for (int i = 0; i < rows.length; i++) {
            for (int j = 0; j < columns; j++) {
                scaled.setEntry(i, j, rows[i][j] / columnScale[j]);
            }
        }
        SingularValueDecomposition svd = new SingularValueDecomposition(scaled);
        double[] values = svd.getSingularValues();
        int counted = 0;
        while (counted < values.length && values[counted] > RANK_TOLERANCE * values[0]) {
            counted++;
        }
        rank = counted;
        singular = Arrays.copyOf(values, rank);
        left = new double[rank][];
        right = new double[rank][];
        for (int k = 0; k < rank; k++) {
            left[k] = svd.getU().getColumn(k);
            right[k] = svd.getV().getColumn(k);
        }
    }

    /**
     * Analyses a design.
     *
     * @param rows one row per observation, all of the same length of at least 1, finite; copied
     * @throws IllegalArgumentException if there is no row, rows differ in length, or an entry isn't finite
     */
    public static LinearDesign of(double[][] rows) {
        if (rows.length == 0 || rows[0].length == 0) {
            throw new IllegalArgumentException("a design needs at least one row and one column");
        }
        double[][] copy = new double[rows.length][];
        for (int i = 0; i < rows.length; i++) {
            if (rows[i].length != rows[0].length) {
                throw new IllegalArgumentException(
                        "row " + i + " has " + rows[i].length + " entries, the first has " + rows[0].length);
            }
            for (double entry : rows[i]) {
                if (!Double.isFinite(entry)) {
                    throw new IllegalArgumentException("row " + i + " holds " + entry);
                }
            }
            copy[i] = rows[i].clone();
        }
        return new LinearDesign(copy);
    }

    /** Number of observations. */
    public int observations() {
        return rows.length;
    }

    /** Number of parameters. */
    public int parameters() {
        return columnScale.length;
    }

    /** Number of parameters, or combinations of them, that can be separated. */
    public int rank() {
        return rank;
    }

    /**
     * Whether the observations of this design say anything about Σ cⱼβⱼ that doesn't hang on an arbitrary constraint.
     *
     * @param combination c, one factor per parameter
     */
    public boolean isEstimable(double[] combination) {
        double[] scaled = scaled(combination);
        double length = norm(scaled);
        double[] rest = scaled.clone();
        for (double[] direction : right) {
            double part = dot(direction, scaled);
            for (int j = 0; j < rest.length; j++) {
                rest[j] -= part * direction[j];
            }
        }
        return norm(rest) <= ROW_SPACE_TOLERANCE * length;
    }

    /**
     * Variance of the least squares estimate of Σ cⱼβⱼ for observations of variance 1: cᵀ(XᵀX)⁺c.
     *
     * @throws IllegalArgumentException if the combination isn't estimable
     */
    public double varianceFactor(double[] combination) {
        requireEstimable(combination);
        double[] scaled = scaled(combination);
        double sum = 0;
        for (int k = 0; k < rank; k++) {
            double part = dot(right[k], scaled) / singular[k];
            sum += part * part;
        }
        return sum;
    }

    /**
     * Least squares fit of observations made by this design.
     *
     * @param observed y, one per row
     */
    public LinearFit fit(double[] observed) {
        if (observed.length != rows.length) {
            throw new IllegalArgumentException(observed.length + " observations for " + rows.length + " rows");
        }
        double[] beta = solve(observed);
        // One step of refinement takes out most of the rounding of a badly conditioned design.
        double[] correction = solve(residuals(observed, beta));
        for (int j = 0; j < beta.length; j++) {
            beta[j] += correction[j];
        }
        return new LinearFit(this, beta, residuals(observed, beta));
    }

    void requireEstimable(double[] combination) {
        if (!isEstimable(combination)) {
            throw new IllegalArgumentException("the design can't estimate " + Arrays.toString(combination));
        }
    }

    private double[] residuals(double[] observed, double[] beta) {
        double[] residuals = new double[observed.length];
        for (int i = 0; i < observed.length; i++) {
            residuals[i] = observed[i] - dot(rows[i], beta);
        }
        return residuals;
    }

    /** The shortest (in scaled parameters) of the least squares solutions. */
    private double[] solve(double[] observed) {
        double[] beta = new double[columnScale.length];
        for (int k = 0; k < rank; k++) {
            double part = dot(left[k], observed) / singular[k];
            for (int j = 0; j < beta.length; j++) {
                beta[j] += part * right[k][j] / columnScale[j];
            }
        }
        return beta;
    }

    private double[] scaled(double[] combination) {
        if (combination.length != columnScale.length) {
            throw new IllegalArgumentException(
                    combination.length + " factors for " + columnScale.length + " parameters");
        }
        double[] scaled = new double[combination.length];
        for (int j = 0; j < scaled.length; j++) {
            scaled[j] = combination[j] / columnScale[j];
        }
        return scaled;
    }

    /** Σ aᵢ·bᵢ; b is at least as long as a. */
    public static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }

    private static double norm(double[] a) {
        return Math.sqrt(dot(a, a));
    }
}
