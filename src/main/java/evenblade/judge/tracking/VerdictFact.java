package evenblade.judge.tracking;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Value;
import evenblade.base.fact.Value.Amount;
import evenblade.base.fact.Value.Count;
import evenblade.base.fact.Value.Estimated;
import evenblade.base.fact.Value.Listed;
import evenblade.base.fact.Value.Quoted;
import evenblade.judge.tracking.TrackVerdict.StandOut;
import evenblade.judge.tracking.TrackVerdict.Suspect;
import java.util.List;

/** The facts of a {@link TrackVerdict}. */
final class VerdictFact {
    private static final double MM_PER_METRE = 1000; // exact
    /** Two offsets that add up to less than this share of one are each other's mirror image: they differ by rounding. */
    private static final double MIRRORED = 1e-6;

    private VerdictFact() {}

    static Fact oneLayout(SwapFit fit, boolean uneven, boolean beyond) {
        TrackingFact even = beyond ? TrackingFact.ONE_ORDER_BEYOND : TrackingFact.ONE_ORDER_EVEN;
        return Fact.of(
                uneven ? TrackingFact.ONE_ORDER_UNEVEN : even,
                length(fit.latest().spreadMm()));
    }

    /** More than may stay, or more than an even propeller gives, but nobody can be named. */
    static Fact unclear(SwapFit fit, boolean beyond) {
        double largest = fit.sessions().stream()
                .mapToDouble(TrackingSession::spreadMm)
                .max()
                .orElseThrow();
        return Fact.of(
                beyond ? TrackingFact.BEYOND_BUT_UNCLEAR : TrackingFact.UNCLEAR,
                length(largest),
                length(fit.readingSigmaMm()));
    }

    static Fact contradict(SwapFit fit) {
        return Fact.of(TrackingFact.MARKS_CONTRADICT, length(fit.readingSigmaMm()));
    }

    static Fact slipped(Suspect suspect, List<StandOut> others) {
        return Fact.of(
                TrackingFact.MARK_SLIPPED,
                new Quoted(String.valueOf(suspect.position())),
                new Count(suspect.session()),
                length(suspect.offMm()),
                others.isEmpty()
                        ? Fact.of(TrackingFact.OTHERS_ALIKE)
                        : Fact.of(TrackingFact.OTHERS_POINT_TO, list(others)));
    }

    private static Amount length(double mm) {
        return Measure.LENGTH.of(mm / MM_PER_METRE);
    }

    static Fact partlyTried(List<StandOut> blades, List<StandOut> positions) {
        return Fact.of(TrackingFact.NOT_SEPARATED_YET, list(blades), list(positions));
    }

    static Fact withinError(SwapFit fit) {
        return Fact.of(TrackingFact.WITHIN_READING_ERROR, Measure.LENGTH.of(fit.readingSigmaMm() / MM_PER_METRE));
    }

    static Fact one(
            boolean goesWithBlade, List<StandOut> standOuts, List<StandOut> perhaps, TrackLimits limits, double odds) {
        boolean small = perhaps.stream().allMatch(s -> Math.abs(s.offset().valueMm()) < limits.mattersMm());
        Fact nothing = Fact.of(TrackingFact.NOTHING_MORE);
        return Fact.of(
                goesWithBlade ? TrackingFact.GOES_WITH_BLADE : TrackingFact.STAYS_ON_HUB,
                list(standOuts),
                standOuts.size() == 2 && mirrored(standOuts) ? Fact.of(TrackingFact.MIRRORED) : nothing,
                odds >= TrackVerdict.FIRM_ODDS
                        ? nothing
                        : Fact.of(TrackingFact.ONLY_LEANS, Measure.NUMBER.of(Math.max(1, odds))),
                perhaps.isEmpty()
                        ? nothing
                        : Fact.of(small ? TrackingFact.PERHAPS_SMALL : TrackingFact.PERHAPS, list(perhaps)));
    }

    static Fact both(List<StandOut> standOuts) {
        return Fact.of(
                TrackingFact.BOTH,
                list(standOuts.stream().filter(StandOut::blade).toList()),
                list(standOuts.stream().filter(s -> !s.blade()).toList()));
    }

    /** Two that lie off each other by the same amount: nobody else to compare with. */
    private static boolean mirrored(List<StandOut> standOuts) {
        double first = standOuts.get(0).offset().valueMm();
        double second = standOuts.get(1).offset().valueMm();
        return Math.abs(first + second) <= MIRRORED * Math.abs(first);
    }

    private static Value list(List<StandOut> standOuts) {
        return standOuts.isEmpty()
                ? Fact.of(TrackingFact.NO_SINGLE_ONE)
                : new Listed(standOuts.stream().<Value>map(VerdictFact::off).toList());
    }

    private static Fact off(StandOut s) {
        return Fact.of(
                s.blade() ? TrackingFact.BLADE_OFF : TrackingFact.POSITION_OFF,
                new Quoted(s.name()),
                new Estimated(
                        s.offset().valueMm() / MM_PER_METRE,
                        s.offset().lowMm() / MM_PER_METRE,
                        s.offset().highMm() / MM_PER_METRE,
                        Measure.LENGTH));
    }
}
