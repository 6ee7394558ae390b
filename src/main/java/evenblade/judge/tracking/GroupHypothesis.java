package evenblade.judge.tracking;

import evenblade.base.numeric.LinearFit;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.IntPredicate;
import java.util.function.IntUnaryOperator;

/**
 * One way to explain the marks by blades alone, or by hub positions alone: the smallest group that stands out, the
 * others being alike.
 *
 * @param standOuts the group; more than {@code shares} where several groups explain equally well
 * @param shares number of shares it needs
 * @param misfit residual sum of squares that it leaves, in units of the stated variances
 */
record GroupHypothesis(List<StandOut> standOuts, int shares, double misfit) {
    /** Chance below which 'the others are alike' is given up. */
    private static final double OTHERS_ALIKE = 0.01;

    /** Explanations whose misfits differ by less than this explain equally well. */
    private static final double SAME_MISFIT = 1e-6;

    /** Larger groups are not tried: with so many standing out there is no common level to stand out from. */
    private static final int LARGEST_GROUP = 3;

    GroupHypothesis {
        standOuts = List.copyOf(standOuts);
    }

    /** By blades, while some hub positions may have a share too. */
    static GroupHypothesis byBlades(SwapFit fit, IntPredicate positions) {
        return new Search(fit, true, positions).smallest();
    }

    /** By hub positions, while some blades may have a share too. */
    static GroupHypothesis byPositions(SwapFit fit, IntPredicate blades) {
        return new Search(fit, false, blades).smallest();
    }

    /** The misfit that the best single blade, or the best single position, leaves. */
    static double singleMisfit(SwapFit fit, boolean blade) {
        return new Search(fit, blade, SwapModel.NONE).best(1).misfit;
    }

    /**
     * Misfit with a price on every share (Schwarz 1978, Annals of Statistics 6(2):461; from memory): half the
     * difference of two such scores is the logarithm of the odds between two explanations.
     */
    double score(SwapFit fit) {
        return misfit / fit.scatter().variance()
                + shares * Math.log(fit.full().design().observations());
    }

    /** The search among blades, or among positions. */
    private static final class Search {
        private final SwapFit fit;
        private final SwapModel model;
        private final boolean blade;
        private final IntPredicate others;
        private final int count;

        Search(SwapFit fit, boolean blade, IntPredicate others) {
            this.fit = fit;
            this.model = fit.model();
            this.blade = blade;
            this.others = others;
            count = blade ? model.blades().size() : model.positions();
        }

        GroupHypothesis smallest() {
            LinearFit allDiffer = fitWith(SwapModel.ALL);
            for (int size = 1; size <= Math.min(LARGEST_GROUP, count / 2); size++) {
                Best best = best(size);
                LinearFit bestFit = fitWith(best.groups.get(0)::contains);
                if (fit.test(bestFit, allDiffer)
                        .map(t -> t.pValue() >= OTHERS_ALIKE)
                        .orElse(true)) {
                    return new GroupHypothesis(members(best.groups), size, best.misfit);
                }
            }
            return new GroupHypothesis(offTheMean(allDiffer), count - 1, allDiffer.residualSumOfSquares());
        }

        Best best(int size) {
            Best best = new Best(new ArrayList<>(), Double.POSITIVE_INFINITY);
            for (Set<Integer> group : groups(count, size)) {
                double misfit = fitWith(group::contains).residualSumOfSquares();
                if (misfit < best.misfit - SAME_MISFIT) {
                    best = new Best(new ArrayList<>(List.of(group)), misfit);
                } else if (misfit <= best.misfit + SAME_MISFIT) {
                    best.groups.add(group);
                }
            }
            return best;
        }

        private LinearFit fitWith(IntPredicate shares) {
            return blade ? model.fit(others, shares) : model.fit(shares, others);
        }

        private List<StandOut> members(List<Set<Integer>> groups) {
            List<StandOut> found = new ArrayList<>();
            Set<Integer> seen = new TreeSet<>();
            for (Set<Integer> group : groups) {
                LinearFit groupFit = fitWith(group::contains);
                for (int member : group) {
                    double[] unit = new double[model.parameters()];
                    unit[column().applyAsInt(member)] = 1;
                    if (groupFit.design().isEstimable(unit) && seen.add(member)) {
                        found.add(new StandOut(name(member), blade, fit.estimate(groupFit, unit)));
                    }
                }
            }
            return found;
        }

        /** Where no level is common to most: those whose deviation from the mean is more than error. */
        private List<StandOut> offTheMean(LinearFit allDiffer) {
            List<StandOut> found = new ArrayList<>();
            for (int i = 0; i < count; i++) {
                double[] combination = model.againstMean(count, i, column());
                if (allDiffer.design().isEstimable(combination)) {
                    Estimate offset = fit.estimate(allDiffer, combination);
                    if (offset.lowMm() > 0 || offset.highMm() < 0) {
                        found.add(new StandOut(name(i), blade, offset));
                    }
                }
            }
            return found;
        }

        private IntUnaryOperator column() {
            return blade ? model::bladeColumn : model::positionColumn;
        }

        private String name(int member) {
            return blade ? model.blades().get(member) : String.valueOf(member + 1);
        }

        private static List<Set<Integer>> groups(int count, int size) {
            List<Set<Integer>> groups = new ArrayList<>();
            for (int bits = 1; bits < 1 << count; bits++) {
                if (Integer.bitCount(bits) == size) {
                    Set<Integer> group = new TreeSet<>();
                    for (int i = 0; i < count; i++) {
                        if ((bits >> i & 1) == 1) {
                            group.add(i);
                        }
                    }
                    groups.add(group);
                }
            }
            return groups;
        }
    }

    /** The groups of one size that leave the least misfit. */
    private record Best(List<Set<Integer>> groups, double misfit) {}
}
