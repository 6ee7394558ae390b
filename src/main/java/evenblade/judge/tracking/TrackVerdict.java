package evenblade.judge.tracking;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Worded;
import evenblade.base.numeric.LinearFit;
import evenblade.judge.tracking.GroupHypothesis.Family;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the swap test points to.
 *
 * @param kind whether the track error goes with blades, stays with hub positions, or can't be told
 * @param names the blades and positions that stand out; empty where none can be named
 * @param fact the answer with its numbers
 * @param standOuts those named, with how far each stands off
 * @param perhaps others that may be out too, by less than matters or less surely; where marks contradict each other, what
 *     the rest of them points to
 * @param suspect where marks contradict each other, the one that fits worst; empty where none does so alone
 * @param odds how many times better this hypothesis fits than the other one (blades against positions); 1 where
 *     there is no choice between the two
 */
public record TrackVerdict(
        Kind kind,
        List<String> names,
        Fact fact,
        List<StandOut> standOuts,
        List<StandOut> perhaps,
        Optional<Suspect> suspect,
        double odds) {
    /** Kinds of answer. */
    public enum Kind implements Worded {
        BLADE,
        POSITION,
        BOTH,
        WITHIN_READING_ERROR,
        NOT_SEPARABLE,
        MARKS_CONTRADICT
    }

    /**
     * Nobody is named while 'nothing is out' keeps this probability. Ours: so that an even propeller is blamed in few
     * cases even where the reading error is stated at half of what it is (docs/figures.md).
     */
    static final double NOTHING_OUT = 0.2;

    /** From this probability of 'nothing is out' on, all are called alike; below it, that can't be told. */
    static final double ALIKE = 0.5;

    /** From this probability on, one mark is said to have slipped. */
    static final double SLIPPED = 0.5;

    /** Share of it that one mark must hold to be named. */
    static final double ONE_MARK = 0.5;

    /** Both, where it is one, is said only from here on. */
    static final double SURELY_BOTH = 0.8;

    /** An offset below what matters is said to be beside the point when the other side's is this many times larger. */
    private static final double BESIDE_THE_POINT = 3;

    /** Odds from which an answer is given without 'leans to'. */
    public static final double FIRM_ODDS = 19;

    /** Below these odds a layout that can't tell all differences hasn't told this one. */
    private static final double ODDS_TO_SPEAK = 3;

    /** Larger odds say no more than 'certain'. */
    private static final double MOST_ODDS = 1e8;

    public TrackVerdict {
        names = List.copyOf(names);
        standOuts = List.copyOf(standOuts);
        perhaps = List.copyOf(perhaps);
    }

    /** Judges the sessions by usual figures for what matters. */
    public static TrackVerdict of(SwapFit fit) {
        return of(fit, TrackLimits.USUAL);
    }

    /** Judges the sessions. */
    public static TrackVerdict of(SwapFit fit, TrackLimits limits) {
        GroupHypotheses all = GroupHypotheses.of(fit.model());
        boolean beyond = fit.sessions().stream().anyMatch(limits::beyond);
        boolean uneven = all.probability(Family.NOTHING) < NOTHING_OUT;
        if (fit.nothingSeparable()) {
            return unnamed(Kind.NOT_SEPARABLE, VerdictFact.oneLayout(fit, uneven, beyond));
        }
        if (all.probability(e -> e.slip().isPresent()) > SLIPPED) {
            return slipped(fit, all);
        }
        if (!uneven) {
            return beyond || all.probability(Family.NOTHING) < ALIKE
                    ? unnamed(
                            fit.scatter().statedIsTooSmall() ? Kind.MARKS_CONTRADICT : Kind.NOT_SEPARABLE,
                            VerdictFact.unclear(fit, beyond))
                    : unnamed(Kind.WITHIN_READING_ERROR, VerdictFact.withinError(fit));
        }
        return blamed(fit, all, limits);
    }

    private static TrackVerdict blamed(SwapFit fit, GroupHypotheses all, TrackLimits limits) {
        double blades = all.probability(Family.BLADES);
        double positions = all.probability(Family.POSITIONS);
        double both = all.probability(Family.BOTH);
        boolean bladesBetter = blades >= positions;
        double odds = Math.min(
                MOST_ODDS, Math.max(blades, positions) / Math.max(Double.MIN_NORMAL, Math.min(blades, positions)));
        List<StandOut> together = standOuts(fit, fit.model(), all.best(Family.BOTH));
        if (both > SURELY_BOTH * (blades + positions + both)) {
            return bothOrMostlyOne(together, limits);
        }
        List<StandOut> byBlades = standOuts(fit, fit.model(), all.best(Family.BLADES));
        List<StandOut> byPositions = standOuts(fit, fit.model(), all.best(Family.POSITIONS));
        if (!fit.separable() && odds < ODDS_TO_SPEAK) {
            return unnamed(Kind.NOT_SEPARABLE, VerdictFact.partlyTried(byBlades, byPositions));
        }
        List<StandOut> named = bladesBetter ? byBlades : byPositions;
        List<StandOut> perhaps = both > Math.max(blades, positions)
                ? together.stream().filter(s -> s.blade() != bladesBetter).toList()
                : List.of();
        return named(
                bladesBetter ? Kind.BLADE : Kind.POSITION,
                named,
                perhaps,
                VerdictFact.one(bladesBetter, named, perhaps, limits, odds),
                odds);
    }

    /** Both, unless one side is small beside the other and below what matters. */
    private static TrackVerdict bothOrMostlyOne(List<StandOut> together, TrackLimits limits) {
        List<StandOut> blades = together.stream().filter(StandOut::blade).toList();
        List<StandOut> positions = together.stream().filter(s -> !s.blade()).toList();
        double bladeMm = largestMm(blades);
        double positionMm = largestMm(positions);
        boolean mostlyOne = Math.min(bladeMm, positionMm) < limits.mattersMm()
                && Math.min(bladeMm, positionMm) * BESIDE_THE_POINT < Math.max(bladeMm, positionMm);
        if (!mostlyOne) {
            return named(Kind.BOTH, together, List.of(), VerdictFact.both(together), 1);
        }
        boolean bladesMost = bladeMm > positionMm;
        List<StandOut> most = bladesMost ? blades : positions;
        List<StandOut> perhaps = bladesMost ? positions : blades;
        return named(
                bladesMost ? Kind.BLADE : Kind.POSITION,
                most,
                perhaps,
                VerdictFact.one(bladesMost, most, perhaps, limits, MOST_ODDS),
                MOST_ODDS);
    }

    private static TrackVerdict slipped(SwapFit fit, GroupHypotheses all) {
        Optional<int[]> place = all.slipped(ONE_MARK);
        if (place.isEmpty()) {
            return unnamed(Kind.MARKS_CONTRADICT, VerdictFact.contradict(fit));
        }
        int session = place.get()[0];
        int position = place.get()[1];
        SwapModel without = fit.model().without(session, position);
        GroupHypothesis rest = all.bestBesideSlip(session, position);
        LinearFit fitted = without.fit(rest.positions()::contains, rest.blades()::contains);
        OptionalDouble off = without.residualMm(fitted, rest, session, position);
        if (off.isEmpty()) {
            return unnamed(Kind.MARKS_CONTRADICT, VerdictFact.contradict(fit));
        }
        List<StandOut> others = standOuts(fit, without, rest);
        Suspect suspect = new Suspect(session + 1, position + 1, off.getAsDouble());
        return new TrackVerdict(
                Kind.MARKS_CONTRADICT,
                List.of(),
                VerdictFact.slipped(suspect, others),
                List.of(),
                others,
                Optional.of(suspect),
                1);
    }

    private static List<StandOut> standOuts(SwapFit fit, SwapModel model, GroupHypothesis hypothesis) {
        List<StandOut> found = new ArrayList<>(GroupOffsets.of(fit, model, hypothesis, true));
        found.addAll(GroupOffsets.of(fit, model, hypothesis, false));
        return found;
    }

    private static double largestMm(List<StandOut> standOuts) {
        return standOuts.stream()
                .mapToDouble(s -> Math.abs(s.offset().valueMm()))
                .max()
                .orElse(0);
    }

    /** Whether the answer needs no 'leans to'. */
    public boolean firm() {
        return kind == Kind.BOTH || kind == Kind.WITHIN_READING_ERROR || odds >= FIRM_ODDS;
    }

    private static TrackVerdict unnamed(Kind kind, Fact fact) {
        return new TrackVerdict(kind, List.of(), fact, List.of(), List.of(), Optional.empty(), 1);
    }

    private static TrackVerdict named(
            Kind kind, List<StandOut> standOuts, List<StandOut> perhaps, Fact fact, double odds) {
        return new TrackVerdict(
                kind,
                standOuts.stream().map(StandOut::name).toList(),
                fact,
                standOuts,
                perhaps,
                Optional.empty(),
                odds);
    }

    /**
     * A blade or hub position that stands out from the others.
     *
     * @param name the blade, or the position's number
     * @param blade whether it is a blade
     * @param offset how far its tip lies off the level of those that don't stand out; where all differ, off their mean
     */
    public record StandOut(String name, boolean blade, Estimate offset) {}

    /**
     * The mark that fits worst with all others.
     *
     * @param session which session, counted from 1 in the order of time within those judged together
     * @param position hub position, from 1
     * @param offMm how far it lies off where the others would have it
     */
    public record Suspect(int session, int position, double offMm) {}
}
