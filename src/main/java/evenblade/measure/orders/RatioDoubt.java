package evenblade.measure.orders;

import evenblade.base.problem.Warning;
import evenblade.machine.installation.Shaft;
import java.util.List;
import java.util.Locale;

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
    private static final double SAME = 0.01;

    public RatioDoubt {
        lines = List.copyOf(lines);
    }

    /** Whether the other ratio is the entered one turned over, as where the two speeds were mixed up. */
    public boolean upsideDown() {
        return Math.abs(pointsTo * entered - 1) < SAME && Math.abs(entered - 1) > SAME;
    }

    /** The doubt in words, with its numbers. */
    public Warning warning() {
        return new Warning(
                "ratio-doubtful",
                String.format(
                        Locale.ROOT,
                        "the lines point to a reduction ratio near %.3f, not %.4g as entered%s: %s %s found there, %s"
                                + " where the entered ratio puts them; check the ratio and which shaft the entered speed"
                                + " was of",
                        pointsTo,
                        entered,
                        upsideDown() ? " (the entered one upside down)" : "",
                        String.join(", ", lines),
                        lines.size() == 1 ? "is" : "are",
                        enteredLines == 0 ? "none" : "only " + enteredLines));
    }
}
