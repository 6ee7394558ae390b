package evenblade.judge.tracking;

import evenblade.base.numeric.LinearFit;
import evenblade.judge.tracking.TrackVerdict.StandOut;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.IntUnaryOperator;

/**
 * How far the blades, or the hub positions, that a hypothesis names lie off the level of the others. Where all differ,
 * there is no level of others: then off their mean, and only those whose interval leaves zero out.
 */
final class GroupOffsets {
    private GroupOffsets() {}

    /**
     * The offsets.
     *
     * @param fit whose reading scatter is used
     * @param model the marks that count
     * @param hypothesis what is out
     * @param blade blades or positions
     */
    static List<StandOut> of(SwapFit fit, SwapModel model, GroupHypothesis hypothesis, boolean blade) {
        Set<Integer> group = blade ? hypothesis.blades() : hypothesis.positions();
        int count = blade ? model.blades().size() : model.positions();
        IntUnaryOperator column = blade ? model::bladeColumn : model::positionColumn;
        // With two, one out by so much is as well the other out by as much the other way.
        boolean allDiffer = group.size() == count || !group.isEmpty() && count == 2;
        LinearFit fitted = model.fit(
                p -> !blade && allDiffer || hypothesis.positions().contains(p),
                b -> blade && allDiffer || hypothesis.blades().contains(b));
        List<StandOut> found = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            if (!allDiffer && !group.contains(i)) {
                continue;
            }
            double[] combination = new double[model.parameters()];
            combination[column.applyAsInt(i)] = 1;
            if (allDiffer) {
                combination = model.againstMean(count, i, column);
            }
            if (fitted.design().isEstimable(combination)) {
                Estimate offset = fit.estimate(fitted, combination);
                if (!allDiffer || offset.lowMm() > 0 || offset.highMm() < 0) {
                    String name = blade ? model.blades().get(i) : String.valueOf(i + 1);
                    found.add(new StandOut(name, blade, offset));
                }
            }
        }
        return found;
    }
}
