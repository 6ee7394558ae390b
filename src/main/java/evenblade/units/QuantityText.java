package evenblade.units;

import evenblade.problem.BadInput;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A number and its unit as people write them: {@code 1.70 m}, {@code 3/16 in}, {@code 1 3/16 in},
 * {@code -0.5 mm}.
 *
 * @param value the number, with its sign
 * @param unit the unit's letters as written; empty where there is none
 */
record QuantityText(double value, String unit) {
    private static final Pattern FORM = Pattern.compile("(?<sign>[+-])?\\s*"
            + "(?:(?:(?<whole>\\d+)(?:\\s+|-))?(?<top>\\d+)\\s*/\\s*(?<bottom>\\d+)"
            + "|(?<decimal>\\d+(?:\\.\\d*)?(?:[eE][+-]?\\d+)?|\\.\\d+))"
            + "\\s*(?<unit>[\\p{L}\"°].*)?");

    /**
     * Splits number and unit.
     *
     * @param expected what to say was expected, where the text has another form
     */
    static QuantityText parse(String text, BadInput.Place place, String expected) {
        // The minus sign of typesetting is taken for the one of the keyboard.
        Matcher form = FORM.matcher(text.strip().replace('\u2212', '-'));
        if (!form.matches()) {
            throw place.found(quoted(text), expected);
        }
        double size =
                form.group("decimal") != null ? Double.parseDouble(form.group("decimal")) : mixed(form, text, place);
        if (!Double.isFinite(size)) {
            throw place.found(quoted(text), expected);
        }
        String unit = form.group("unit") == null ? "" : form.group("unit").strip();
        return new QuantityText("-".equals(form.group("sign")) ? -size : size, unit);
    }

    /** The text in quotes, with a word for it where it is empty. */
    static String quoted(String text) {
        return text.isBlank() ? "nothing" : "\"" + text.strip() + "\"";
    }

    private static double mixed(Matcher form, String text, BadInput.Place place) {
        double bottom = Double.parseDouble(form.group("bottom"));
        if (bottom == 0) {
            throw place.found(quoted(text) + ", a fraction with 0 below the line", "a fraction such as 3/16");
        }
        double whole = form.group("whole") == null ? 0 : Double.parseDouble(form.group("whole"));
        return whole + Double.parseDouble(form.group("top")) / bottom;
    }
}
