package evenblade.judge.tracking;

import evenblade.base.numeric.LinearDesign;
import evenblade.base.numeric.LinearFit;
import evenblade.base.problem.BadInput;
import java.util.List;
import java.util.OptionalDouble;
import java.util.TreeSet;
import java.util.function.IntPredicate;
import java.util.function.IntUnaryOperator;

/**
 * The rows of y = m + h + t for a set of sessions: one row per session and hub position, the mean of its repeats,
 * weighted by √n/σ, with σ the stated reading error and the rounding together. Parameters in order: one m per session, one h per position, one t per blade, none left out; the
 * rank analysis takes care of what isn't determined.
 */
final class SwapModel {
    /** Every position, or every blade, has a share of its own. */
    static final IntPredicate ALL = i -> true;

    /** All positions, or all blades, are alike. */
    static final IntPredicate NONE = i -> false;

    private final List<TrackingSession> sessions;
    private final List<String> blades;
    private final int positions;
    private final double[] weighted;
    private final List<Double> errorsMm;
    private final int leftOut;
    private final double repeatSumOfSquares;
    private final int repeatDegreesOfFreedom;

    /** All rows but one, which doesn't count. */
    private SwapModel(SwapModel all, int leftOut) {
        sessions = all.sessions;
        blades = all.blades;
        positions = all.positions;
        weighted = all.weighted.clone();
        weighted[leftOut] = 0;
        errorsMm = all.errorsMm;
        repeatSumOfSquares = all.repeatSumOfSquares;
        repeatDegreesOfFreedom = all.repeatDegreesOfFreedom;
        this.leftOut = leftOut;
    }

    SwapModel(List<TrackingSession> sessions) {
        if (sessions.isEmpty()) {
            throw new IllegalArgumentException("no tracking session");
        }
        this.sessions = List.copyOf(sessions);
        double stepMm = RoundingStep.seenMm(sessions);
        errorsMm = sessions.stream()
                .map(s -> RoundingStep.readingErrorMm(s, stepMm))
                .toList();
        positions = sessions.get(0).layout().positions();
        TreeSet<String> names = new TreeSet<>();
        int repeats = 0;
        double squares = 0;
        weighted = new double[sessions.size() * positions];
        for (int s = 0; s < sessions.size(); s++) {
            TrackingSession session = sessions.get(s);
            if (session.layout().positions() != positions) {
                throw BadInput.in("tracking sessions")
                        .found(
                                session.layout().positions() + " hub positions after " + positions,
                                "the same hub in all");
            }
            names.addAll(session.layout().blades());
            double sigmaMm = errorsMm.get(s);
            List<Double> marks = session.marksMm();
            for (int p = 0; p < positions; p++) {
                weighted[s * positions + p] = marks.get(p) * weight(s, p);
                for (var reading : session.readings().get(p)) {
                    double off = (reading.millimetres() - marks.get(p)) / sigmaMm;
                    squares += off * off;
                }
                repeats += session.readings().get(p).size() - 1;
            }
        }
        blades = List.copyOf(names);
        repeatSumOfSquares = squares;
        repeatDegreesOfFreedom = repeats;
        leftOut = -1;
    }

    List<TrackingSession> sessions() {
        return sessions;
    }

    /** Standard deviation of one reading of each session in mm, as stated and with the rounding that is seen. */
    List<Double> errorsMm() {
        return errorsMm;
    }

    List<String> blades() {
        return blades;
    }

    int positions() {
        return positions;
    }

    int parameters() {
        return sessions.size() + positions + blades.size();
    }

    int positionColumn(int position) {
        return sessions.size() + position;
    }

    int bladeColumn(int blade) {
        return sessions.size() + positions + blade;
    }

    /** Squared scatter of the repeats about their means, in units of the stated variances. */
    double repeatSumOfSquares() {
        return repeatSumOfSquares;
    }

    int repeatDegreesOfFreedom() {
        return repeatDegreesOfFreedom;
    }

    /**
     * Fits the model in which only some positions and blades have a share of their own and the others are alike.
     *
     * @param positionHasShare asked with indices from 0
     * @param bladeHasShare asked with indices from 0 into {@link #blades()}
     */
    LinearFit fit(IntPredicate positionHasShare, IntPredicate bladeHasShare) {
        return LinearDesign.of(rows(positionHasShare, bladeHasShare, List.of())).fit(weighted);
    }

    /**
     * Fits the model in which the positions differ only by a pattern times an unknown factor, which is the last
     * parameter, and every blade has a share.
     *
     * @param patternMm one value per position
     */
    LinearFit fitPattern(List<Double> patternMm) {
        return LinearDesign.of(rows(NONE, ALL, patternMm)).fit(weighted);
    }

    private double[][] rows(IntPredicate positionHasShare, IntPredicate bladeHasShare, List<Double> patternMm) {
        double[][] rows = new double[weighted.length][parameters() + (patternMm.isEmpty() ? 0 : 1)];
        for (int s = 0; s < sessions.size(); s++) {
            TrackingSession session = sessions.get(s);
            for (int p = 0; p < positions; p++) {
                double[] row = rows[s * positions + p];
                double weight = s * positions + p == leftOut ? 0 : weight(s, p);
                row[s] = weight;
                if (positionHasShare.test(p)) {
                    row[positionColumn(p)] = weight;
                }
                int blade = blades.indexOf(session.layout().blades().get(p));
                if (bladeHasShare.test(blade)) {
                    row[bladeColumn(blade)] = weight;
                }
                if (!patternMm.isEmpty()) {
                    row[parameters()] = weight * patternMm.get(p);
                }
            }
        }
        return rows;
    }

    /** The combination that gives h + t at a position of a layout, less its mean over that layout. */
    double[] trackCombination(Layout layout, int position) {
        double[] combination = new double[parameters()];
        for (int p = 0; p < positions; p++) {
            double share = (p == position ? 1 : 0) - 1.0 / positions;
            combination[positionColumn(p)] += share;
            combination[bladeColumn(blades.indexOf(layout.blades().get(p)))] += share;
        }
        return combination;
    }

    /** The combination that gives one member of a set of columns against the mean of them all. */
    double[] againstMean(int count, int member, IntUnaryOperator column) {
        double[] combination = new double[parameters()];
        for (int j = 0; j < count; j++) {
            combination[column.applyAsInt(j)] = (j == member ? 1 : 0) - 1.0 / count;
        }
        return combination;
    }

    /** Without the mark of one session and position, both from 0. */
    SwapModel without(int session, int position) {
        return new SwapModel(this, session * positions + position);
    }

    /**
     * How far a mark lies off what the others say of its place, in mm.
     *
     * @param fit of the others, in which the hypothesis's blades and positions have a share
     * @return nothing where they don't say
     */
    OptionalDouble residualMm(LinearFit fit, GroupHypothesis hypothesis, int session, int position) {
        int blade = blades.indexOf(sessions.get(session).layout().blades().get(position));
        double[] place = new double[parameters()];
        place[session] = 1;
        place[positionColumn(position)] = hypothesis.positions().contains(position) ? 1 : 0;
        place[bladeColumn(blade)] = hypothesis.blades().contains(blade) ? 1 : 0;
        return fit.design().isEstimable(place)
                ? OptionalDouble.of(sessions.get(session).marksMm().get(position) - fit.estimate(place))
                : OptionalDouble.empty();
    }

    private double weight(int session, int position) {
        return Math.sqrt(sessions.get(session).readings().get(position).size()) / errorsMm.get(session);
    }
}
