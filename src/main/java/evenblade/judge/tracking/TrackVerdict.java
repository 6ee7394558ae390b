package evenblade.judge.tracking;

import evenblade.base.fact.Fact;
import evenblade.base.numeric.FTest;
import evenblade.base.numeric.LinearFit;
import java.util.ArrayList;
import java.util.List;

/**
 * What the swap test points to.
 *
 * @param kind whether the track error goes with blades, stays with hub positions, or can't be told
 * @param names the blades and positions that stand out; empty where none can be named
 * @param fact the answer with its numbers
 * @param standOuts those named, with how far each stands off
 * @param odds how many times better this explanation fits than the other one (blades against positions); 1 where
 *     there is no choice between the two
 */
public record TrackVerdict(Kind kind, List<String> names, Fact fact, List<StandOut> standOuts, double odds) {
    /** Kinds of answer. */
    public enum Kind {
        BLADE("blade"),
        POSITION("position"),
        BOTH("both"),
        WITHIN_READING_ERROR("within-reading-error"),
        NOT_SEPARABLE("not-separable");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        /** As written in JSON. */
        public String word() {
            return word;
        }
    }

    /** Chance of calling marks uneven that are even: all tests share it. */
    private static final double FALSE_ALARM = 0.05;

    /** With so few blades the tests of all at once see a single culprit as well as single tests do. */
    private static final int FEW_BLADES = 4;

    /** With more: what of it goes to the tests of all blades and of all positions; the rest to single ones. */
    private static final double FALSE_ALARM_OF_ALL = 0.02;

    /** Chance of calling it both where it is one. */
    private static final double FALSE_BOTH = 0.01;

    /** Odds from which an answer is given without 'leans to'. */
    public static final double FIRM_ODDS = 19;

    /** Below these odds a layout that can't tell all differences hasn't told this one. */
    private static final double ODDS_TO_SPEAK = 3;

    /** A larger gap in the score says no more than 'certain'. */
    private static final double MOST_GAP = 40;

    public TrackVerdict {
        names = List.copyOf(names);
        standOuts = List.copyOf(standOuts);
    }

    /** Judges the sessions. */
    public static TrackVerdict of(SwapFit fit) {
        boolean uneven = uneven(fit);
        if (fit.nothingSeparable()) {
            return notSeparable(VerdictFact.oneLayout(fit, uneven));
        }
        if (!uneven) {
            return new TrackVerdict(Kind.WITHIN_READING_ERROR, List.of(), VerdictFact.withinError(fit), List.of(), 1);
        }
        GroupHypothesis blades = GroupHypothesis.byBlades(fit, SwapModel.NONE);
        GroupHypothesis positions = GroupHypothesis.byPositions(fit, SwapModel.NONE);
        double gap = positions.score(fit) - blades.score(fit);
        boolean bladesBetter = gap >= 0;
        LinearFit better = bladesBetter
                ? fit.model().fit(SwapModel.NONE, SwapModel.ALL)
                : fit.model().fit(SwapModel.ALL, SwapModel.NONE);
        if (explains(fit, better, fit.full(), FALSE_BOTH)) {
            List<StandOut> standOuts =
                    new ArrayList<>(GroupHypothesis.byBlades(fit, SwapModel.ALL).standOuts());
            standOuts.addAll(GroupHypothesis.byPositions(fit, SwapModel.ALL).standOuts());
            return named(Kind.BOTH, standOuts, VerdictFact.both(standOuts), 1);
        }
        double odds = Math.exp(Math.min(Math.abs(gap), MOST_GAP) / 2);
        if (!fit.separable() && odds < ODDS_TO_SPEAK) {
            return notSeparable(VerdictFact.partlyTried(blades.standOuts(), positions.standOuts()));
        }
        List<StandOut> standOuts = bladesBetter ? blades.standOuts() : positions.standOuts();
        return named(
                bladesBetter ? Kind.BLADE : Kind.POSITION,
                standOuts,
                VerdictFact.one(bladesBetter, standOuts, odds),
                odds);
    }

    /**
     * Whether the marks differ by more than reading error: by all blades, by all positions, or (which sees a single
     * culprit better) by one blade or one position alone.
     */
    private static boolean uneven(SwapFit fit) {
        SwapModel model = fit.model();
        LinearFit even = model.fit(SwapModel.NONE, SwapModel.NONE);
        boolean few = model.positions() <= FEW_BLADES;
        double chance = few ? FALSE_ALARM / 2 : FALSE_ALARM_OF_ALL / 2;
        return explains(fit, even, model.fit(SwapModel.NONE, SwapModel.ALL), chance)
                || explains(fit, even, model.fit(SwapModel.ALL, SwapModel.NONE), chance)
                || !few && (singleExplains(fit, even, true) || singleExplains(fit, even, false));
    }

    private static boolean singleExplains(SwapFit fit, LinearFit even, boolean blade) {
        int tried = fit.blades().size() + fit.positions();
        FTest test = FTest.of(
                even.residualSumOfSquares() - GroupHypothesis.singleMisfit(fit, blade),
                1,
                fit.scatter().variance(),
                fit.scatter().degreesOfFreedom());
        return test.pValue() < (FALSE_ALARM - FALSE_ALARM_OF_ALL) / tried;
    }

    /** Whether the answer needs no 'leans to'. */
    public boolean firm() {
        return kind == Kind.BOTH || kind == Kind.WITHIN_READING_ERROR || odds >= FIRM_ODDS;
    }

    private static boolean explains(SwapFit fit, LinearFit smaller, LinearFit larger, double chance) {
        return fit.test(smaller, larger).map(test -> test.pValue() < chance).orElse(false);
    }

    private static TrackVerdict notSeparable(Fact fact) {
        return new TrackVerdict(Kind.NOT_SEPARABLE, List.of(), fact, List.of(), 1);
    }

    private static TrackVerdict named(Kind kind, List<StandOut> standOuts, Fact fact, double odds) {
        return new TrackVerdict(kind, standOuts.stream().map(StandOut::name).toList(), fact, standOuts, odds);
    }
}
