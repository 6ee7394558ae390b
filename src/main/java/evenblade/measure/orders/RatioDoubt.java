package evenblade.measure.orders;

import evenblade.base.fact.Code;
import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value.Count;
import evenblade.base.fact.Value.Listed;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.machine.installation.Shaft;
import java.util.List;

/**
 * Another reduction ratio that explains the lines of a run clearly better than the entered one.
 *
 * @param entered the ratio that was entered, engine revolutions per propeller revolution
 * @param pointsTo the one that the lines point to
 * @param kept the shaft whose speed was taken as found
 * @param lines names of the other shaft's lines that are found with it and not with the entered one
 * @param enteredLines how many lines of that shaft only the entered ratio explains
 * @param margin by how much it explains more; larger is clearer
 */
public record RatioDoubt(
        double entered, double pointsTo, Shaft kept, List<String> lines, int enteredLines, double margin) {
    private static final double SAME = 0.01; // ours: nearer ratios can't be told apart

    public RatioDoubt {
        lines = List.copyOf(lines);
    }

    /** Whether the other ratio is the entered one turned over, as where the two speeds were mixed up. */
    public boolean upsideDown() {
        return Math.abs(pointsTo * entered - 1) < SAME && Math.abs(entered - 1) > SAME;
    }

    /** The doubt in words, with its numbers. */
    public Warning warning() {
        return Warning.of(
                WarningCode.RATIO_DOUBTFUL,
                Subject.Whole.INSTALLATION,
                Measure.NUMBER.of(pointsTo),
                Measure.NUMBER.of(entered),
                Fact.of(upsideDown() ? OrderFact.RATIO_UPSIDE_DOWN : OrderFact.RATIO_OTHER),
                Listed.quoted(lines),
                enteredLines == 0 ? Fact.of(OrderFact.NONE) : Fact.of(OrderFact.ONLY, new Count(enteredLines)));
    }

    /** What is said of orders, beside warnings. */
    public enum OrderFact implements Code {
        RATIO_UPSIDE_DOWN,
        RATIO_OTHER,
        NONE,
        ONLY
    }
}
