package evenblade.tell.report;

import evenblade.base.units.Length;
import evenblade.base.units.LengthUnit;
import evenblade.judge.tracking.LimitCheck;
import evenblade.tell.document.Face;
import evenblade.tell.document.Phrases;

/**
 * Lengths in both units, the one that the job was worked in first.
 *
 * @param units which comes first
 */
public record Lengths(LengthUnit units) {
    /** {@code 4.76 mm (3/16 in)} or {@code 3/16 in (4.76 mm)}. */
    public String both(Length length) {
        return units == LengthUnit.INCH
                ? inches(length) + " (" + millimetres(length) + ")"
                : millimetres(length) + " (" + inches(length) + ")";
    }

    /** A large length: {@code 1.700 m (66.93 in)} or the other way round. */
    String large(Length length) {
        String metres = Amounts.fixed(length.metres(), 3) + " m";
        String inches = Amounts.fixed(length.inches(), 2) + " in";
        return units == LengthUnit.INCH ? inches + " (" + metres + ")" : metres + " (" + inches + ")";
    }

    /** In the first unit alone. */
    public String first(Length length) {
        return units == LengthUnit.INCH ? inches(length) : millimetres(length);
    }

    /** A check against a limit in one line: the numbers, the statistic, the source. */
    String check(LimitCheck check) {
        if (check.measured().isEmpty() || !check.unit().equals("mm")) {
            return Phrases.of(Face.PAPER).text(check.fact()) + ".";
        }
        return both(Length.ofMillimetres(check.measured().getAsDouble())) + " "
                + InstallationFacts.statistic(check.statistic()) + ", "
                + (check.outcome() == LimitCheck.Outcome.WITHIN ? "within" : "BEYOND") + " the limit of "
                + both(Length.ofMillimetres(check.allowed())) + " (" + check.source() + ").";
    }

    private static String millimetres(Length length) {
        return Amounts.fixed(length.millimetres(), 2) + " mm";
    }

    private static String inches(Length length) {
        return Amounts.inches(length) + " in";
    }
}
