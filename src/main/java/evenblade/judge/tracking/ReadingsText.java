package evenblade.judge.tracking;

import evenblade.base.problem.BadInput;
import evenblade.base.units.Angle;
import evenblade.base.units.Length;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Readings as they are typed: one per hub position, separated by commas, each with its unit, as in
 * {@code 0 in, 1/16 in, 3/16 in}. Repeats follow as further rounds after a semicolon:
 * {@code 0 mm, 1.5 mm, 4.5 mm; 0.3 mm, 1.5 mm, 5 mm}. All in one unit: a mixture is more often a slip than meant.
 */
public final class ReadingsText {
    private static final Pattern UNIT = Pattern.compile("[\\p{L}\"°µμ]+$");

    /** Between two digits, with a unit further on before the next comma: 0,5 mm. */
    private static final Pattern DECIMAL_COMMA = Pattern.compile("\\d,\\d+\\s*[\\p{L}\"°µμ]");

    private ReadingsText() {}

    /**
     * Reads tip marks.
     *
     * @param text as typed
     * @param positions number of hub positions
     * @return for each hub position in order, its readings
     * @throws BadInput if a reading is missing, has no unit or another unit than the first, or isn't a length
     */
    public static List<List<Length>> lengths(String text, int positions) {
        return read(text, positions, Length::parse);
    }

    /** Reads blade angles. */
    public static List<List<Angle>> angles(String text, int positions) {
        return read(text, positions, Angle::parse);
    }

    private static <Q> List<List<Q>> read(String text, int positions, BiFunction<String, BadInput.Place, Q> parse) {
        List<List<Q>> byPosition = new ArrayList<>();
        for (int p = 0; p < positions; p++) {
            byPosition.add(new ArrayList<>());
        }
        String firstUnit = unit(text.split("[,;]", 2)[0]);
        for (String round : text.split(";", -1)) {
            String[] entries = round.split(",", -1);
            if (entries.length != positions && DECIMAL_COMMA.matcher(round).find()) {
                throw BadInput.in("readings")
                        .found(
                                "\"" + round.strip() + "\", with a comma in a decimal",
                                "a point in decimals, like 0.5 mm");
            }
            if (entries.length != positions) {
                throw BadInput.in("readings")
                        .found(
                                entries.length + " in \"" + round.strip() + "\"",
                                positions + ", one for each hub position");
            }
            for (int p = 0; p < positions; p++) {
                BadInput.Place place = BadInput.in("reading at hub position " + (p + 1));
                byPosition.get(p).add(parse.apply(entries[p], place));
                String unit = unit(entries[p]);
                if (!unit.equals(firstUnit)) {
                    throw place.found("\"" + entries[p].strip() + "\"", "the unit of the first reading, " + firstUnit);
                }
            }
        }
        return byPosition;
    }

    private static String unit(String entry) {
        Matcher unit = UNIT.matcher(entry.strip());
        String written = unit.find() ? unit.group() : "";
        return switch (written) {
            case "inch", "inches", "\"" -> "in";
            case "°", "degrees" -> "deg";
            default -> written;
        };
    }
}
