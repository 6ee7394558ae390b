package evenblade.judge.tracking;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.numeric.LinearFit;
import java.util.List;
import java.util.Optional;

/**
 * Whether the measured face run-out of the flange explains what stays on the hub when the blades move.
 *
 * @param share how many times the predicted pattern the hub positions show: 1 is 'just as predicted', 0 'nothing of it'
 * @param shareLow lower end of its 95 % interval
 * @param shareHigh upper end of its 95 % interval
 * @param answer what comes of it
 * @param fact the answer with its numbers
 */
public record RunOutTest(double share, double shareLow, double shareHigh, Answer answer, Fact fact) {
    /** What the test says. */
    public enum Answer {
        /** The pattern is there in the predicted size, and the positions show nothing else. */
        EXPLAINS,
        /** The pattern is there, and the positions show something else besides. */
        EXPLAINS_PART,
        /** The positions don't show the pattern. */
        DOES_NOT_EXPLAIN,
        /** The marks are too coarse: they would allow the pattern as well as none. */
        TOO_SMALL_TO_TELL
    }

    private static final double CHANCE = 0.05; // the usual 5 %

    /**
     * Tests the prediction.
     *
     * @param predictedMm from {@link FaceRunOut#predictedMarksMm}, by hub position
     * @return nothing where the layouts tried so far can't tell positions from blades, or where nothing is predicted
     */
    public static Optional<RunOutTest> of(SwapFit fit, List<Double> predictedMm) {
        LinearFit pattern = fit.model().fitPattern(predictedMm);
        double[] factor = new double[fit.model().parameters() + 1];
        factor[fit.model().parameters()] = 1;
        if (MarkStatistics.spread(predictedMm) == 0 || !pattern.design().isEstimable(factor)) {
            return Optional.empty();
        }
        Estimate share = fit.estimate(pattern, factor);
        // What the positions show beyond the pattern; with two blades no more could show.
        boolean more = fit.test(pattern, fit.full()).orElse(1) < CHANCE;
        boolean allowsNone = share.lowMm() <= 0;
        boolean allowsAll = share.lowMm() <= 1 && share.highMm() >= 1;
        Answer answer;
        if (allowsNone && allowsAll) {
            answer = more ? Answer.DOES_NOT_EXPLAIN : Answer.TOO_SMALL_TO_TELL;
        } else if (allowsNone) {
            answer = Answer.DOES_NOT_EXPLAIN;
        } else {
            answer = allowsAll && !more ? Answer.EXPLAINS : Answer.EXPLAINS_PART;
        }
        return Optional.of(new RunOutTest(
                share.valueMm(), share.lowMm(), share.highMm(), answer, fact(answer, share, predictedMm)));
    }

    private static Fact fact(Answer answer, Estimate share, List<Double> predictedMm) {
        return Fact.of(
                switch (answer) {
                    case EXPLAINS -> TrackingFact.RUN_OUT_EXPLAINS;
                    case EXPLAINS_PART -> TrackingFact.RUN_OUT_EXPLAINS_PART;
                    case DOES_NOT_EXPLAIN -> TrackingFact.RUN_OUT_DOES_NOT_EXPLAIN;
                    case TOO_SMALL_TO_TELL -> TrackingFact.RUN_OUT_TOO_SMALL;
                },
                Measure.LENGTH.of(MarkStatistics.spread(predictedMm) / 1000),
                Measure.NUMBER.of(share.valueMm()),
                Measure.NUMBER.of(share.lowMm()),
                Measure.NUMBER.of(share.highMm()));
    }
}
