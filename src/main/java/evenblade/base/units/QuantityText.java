package evenblade.base.units;

import evenblade.base.problem.BadInput;
import java.util.OptionalDouble;

/**
 * A number and its unit as people write them: {@code 1.70 m}, {@code 3/16 in}, {@code 1 3/16 in},
 * {@code -0.5 mm}.
 *
 * @param value the number, with its sign
 * @param unit the unit's letters as written; empty where there is none
 */
record QuantityText(double value, String unit) {
    /**
     * Splits number and unit.
     *
     * @param expected what to say was expected, where the text has another form
     */
    static QuantityText parse(String text, BadInput.Place place, String expected) {
        // The minus sign of typesetting is taken for the one of the keyboard.
        NumberScan scan = new NumberScan(text.strip().replace('\u2212', '-'));
        double sign = scan.sign();
        OptionalDouble size = scan.size();
        String unit = scan.rest();
        if (scan.dividesByZero()) {
            throw place.found(quoted(text) + ", a fraction with 0 below the line", "a fraction such as 3/16");
        }
        if (size.isEmpty() || !Double.isFinite(size.getAsDouble()) || !startsLikeAUnit(unit)) {
            throw place.found(quoted(text), expected);
        }
        return new QuantityText(sign * size.getAsDouble(), unit);
    }

    private static boolean startsLikeAUnit(String unit) {
        return unit.isEmpty() || Character.isLetter(unit.charAt(0)) || unit.charAt(0) == '"' || unit.charAt(0) == '°';
    }

    /** The text in quotes, with a word for it where it is empty. */
    static String quoted(String text) {
        return text.isBlank() ? "nothing" : "\"" + text.strip() + "\"";
    }
}
