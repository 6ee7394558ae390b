package evenblade.judge.tracking;

import evenblade.base.numeric.Distributions;
import evenblade.base.numeric.LinearFit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.IntFunction;
import java.util.function.IntUnaryOperator;

/**
 * What the tracking sessions of a job say about blades and hub positions: y = m + h + t + ε by weighted least squares,
 * with m the session's zero, h the hub position's share (Σh = 0) and t the blade's share (Σt = 0).
 *
 * <p>With one layout h and t can't be separated, whatever the number of repeats; only their sum is known. Every answer
 * that the layouts can't give is 'nothing' here, never a number.
 */
public final class SwapFit {
    private final List<TrackingSession> sessions;
    private final SwapModel model;
    private final LinearFit full;
    private final ReadingScatter scatter;
    private final double quantile;

    private SwapFit(List<TrackingSession> sessions) {
        this.sessions = List.copyOf(sessions);
        model = new SwapModel(sessions);
        full = model.fit(SwapModel.ALL, SwapModel.ALL);
        scatter = ReadingScatter.of(
                full.residualSumOfSquares() + model.repeatSumOfSquares(),
                full.degreesOfFreedom() + model.repeatDegreesOfFreedom());
        quantile = Distributions.reach95(scatter.degreesOfFreedom());
    }

    /**
     * Fits the sessions.
     *
     * @param sessions at least one, in order of time, all with the same number of hub positions
     */
    public static SwapFit of(List<TrackingSession> sessions) {
        return new SwapFit(sessions);
    }

    public List<TrackingSession> sessions() {
        return sessions;
    }

    /** The session measured last. */
    public TrackingSession latest() {
        return sessions.get(sessions.size() - 1);
    }

    /** All blades that ever sat on the hub, by name. */
    public List<String> blades() {
        return model.blades();
    }

    /** Number of hub positions. */
    public int positions() {
        return model.positions();
    }

    /** Whether every difference between two blades and between two positions can be told. */
    public boolean separable() {
        return full.design().rank()
                == sessions.size() + model.positions() - 1 + model.blades().size() - 1;
    }

    /** Whether nothing at all can be told about blades apart from positions. */
    public boolean nothingSeparable() {
        return bladesAlike().isEmpty();
    }

    public ReadingScatter scatter() {
        return scatter;
    }

    /** Standard deviation of one reading of the latest session, in mm, as used for the errors here. */
    public double readingSigmaMm() {
        return scatter.factor() * statedErrorMm();
    }

    /** The reading error as stated, with the rounding that the readings show. */
    double statedErrorMm() {
        return model.errorsMm().get(sessions.size() - 1);
    }

    /** Each blade against the mean of all blades. */
    public List<Deviation> bladeDeviations() {
        return deviations(model.blades().size(), i -> model.blades().get(i), model::bladeColumn);
    }

    /** Each hub position against the mean of all positions. */
    public List<Deviation> positionDeviations() {
        return deviations(model.positions(), i -> String.valueOf(i + 1), model::positionColumn);
    }

    /** Differences between two blades that the layouts can tell. */
    public List<Contrast> bladeContrasts() {
        return contrasts(model.blades().size(), i -> model.blades().get(i), model::bladeColumn);
    }

    /** Differences between two hub positions that the layouts can tell. */
    public List<Contrast> positionContrasts() {
        return contrasts(model.positions(), i -> String.valueOf(i + 1), model::positionColumn);
    }

    /**
     * Where the tip at each hub position would lie in a layout, against the mean of that layout: h + t, in order of the
     * positions. Known for every layout that was measured, even where h and t aren't known apart.
     *
     * @return nothing where the layouts tried so far can't tell
     */
    public Optional<List<Estimate>> predictedTrack(Layout layout) {
        return predicted(layout, this::estimate);
    }

    /** Predicted marks without their errors, in mm; quick, for searches. */
    Optional<List<Double>> predictedMarksMm(Layout layout) {
        return predicted(layout, full::estimate);
    }

    private <T> Optional<List<T>> predicted(Layout layout, Function<double[], T> tip) {
        List<T> tips = new ArrayList<>();
        for (int p = 0; p < model.positions(); p++) {
            double[] combination = model.trackCombination(layout, p);
            if (!full.design().isEstimable(combination)) {
                return Optional.empty();
            }
            tips.add(tip.apply(combination));
        }
        return Optional.of(tips);
    }

    /** How much farther out the tip at one position lies than at another, in a layout; positions from 0. */
    Estimate trackDifference(Layout layout, int first, int second) {
        double[] combination = model.trackCombination(layout, first);
        double[] other = model.trackCombination(layout, second);
        for (int j = 0; j < combination.length; j++) {
            combination[j] -= other[j];
        }
        return estimate(combination);
    }

    /** Chance of 'all blades alike', positions allowed for; nothing where the layouts can't tell. */
    public OptionalDouble bladesAlike() {
        return test(model.fit(SwapModel.ALL, SwapModel.NONE), full);
    }

    /** Chance (F-test) that the larger of two nested fits explains no more than scatter; nothing where they are the same. */
    OptionalDouble test(LinearFit smaller, LinearFit larger) {
        int gained = larger.design().rank() - smaller.design().rank();
        if (gained <= 0) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(Distributions.fTest(
                smaller.residualSumOfSquares() - larger.residualSumOfSquares(),
                gained,
                scatter.variance(),
                scatter.degreesOfFreedom()));
    }

    SwapModel model() {
        return model;
    }

    LinearFit full() {
        return full;
    }

    Estimate estimate(double[] combination) {
        return estimate(full, combination);
    }

    /** An estimate from this fit or from one of a simpler model, with the scatter of this one. */
    Estimate estimate(LinearFit fit, double[] combination) {
        double error = scatter.factor() * Math.sqrt(fit.design().varianceFactor(combination));
        return Estimate.of(fit.estimate(combination), error, quantile);
    }

    private List<Deviation> deviations(int count, IntFunction<String> name, IntUnaryOperator column) {
        List<Deviation> deviations = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double[] combination = model.againstMean(count, i, column);
            deviations.add(new Deviation(
                    name.apply(i),
                    full.design().isEstimable(combination) ? Optional.of(estimate(combination)) : Optional.empty()));
        }
        return deviations;
    }

    private List<Contrast> contrasts(int count, IntFunction<String> name, IntUnaryOperator column) {
        List<Contrast> contrasts = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            for (int j = i + 1; j < count; j++) {
                double[] combination = new double[model.parameters()];
                combination[column.applyAsInt(i)] = 1;
                combination[column.applyAsInt(j)] = -1;
                if (full.design().isEstimable(combination)) {
                    contrasts.add(new Contrast(name.apply(i), name.apply(j), estimate(combination)));
                }
            }
        }
        return contrasts;
    }

    /**
     * How far a blade, or a hub position, puts the tip off the mean of all blades, or of all positions.
     *
     * @param name the blade, or the position's number
     * @param estimate the deviation; nothing where the layouts tried so far can't tell it
     */
    public record Deviation(String name, Optional<Estimate> estimate) {}
}
