package evenblade.face.app;

import evenblade.base.problem.BadInput;
import evenblade.base.units.Length;
import evenblade.base.units.LengthUnit;
import evenblade.tell.document.FigureFormat;
import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Puts the short lengths in a sentence into the unit that the reader wants first; the other stays beside it. */
public final class LengthWords {
    private static final String NUMBER = "[-+−]?\\d+(?:\\.\\d+)?";
    /** A length, a range or a length with its error, in mm; with its inches behind it where they are there already. */
    private static final Pattern MILLIMETRES = Pattern.compile(
            "(?<![\\d./=] ?)(" + NUMBER + ")(?:( to | ± )(" + NUMBER + "))? mm\\b(?![/²])(?: \\(([^()]* in)\\))?");
    /** A length as read off a rule in inches. */
    private static final Pattern INCHES =
            Pattern.compile("(?<![\\d./] ?)([-+−]?(?:\\d+ )?\\d+/\\d+|" + NUMBER + ") in\\b(?=[,.;:]|$| of| in )");
    /** Tenths of a millimetre and whole ones get two figures more in inches, finer ones one: 0.001 in is 0.0254 mm. */
    private static final int COARSE = 1;

    private static final int MOST_DECIMALS = 4;

    private LengthWords() {}

    /** The sentence with its lengths in the wanted unit first: {@code 0.252 in = 6.40 mm}. */
    public static String in(LengthUnit unit, String sentence) {
        return unit == LengthUnit.INCH
                ? MILLIMETRES.matcher(sentence).replaceAll(found -> Matcher.quoteReplacement(inches(found)))
                : INCHES.matcher(sentence).replaceAll(found -> Matcher.quoteReplacement(millimetres(found)));
    }

    private static String inches(MatchResult found) {
        String range = found.group(2) == null ? "" : found.group(2);
        String second = found.group(3) == null ? "" : found.group(3);
        String asWas = found.group(1) + range + second + " mm";
        String inches = Optional.ofNullable(found.group(4))
                .orElseGet(() -> inches(found.group(1)) + range + (second.isEmpty() ? "" : inches(second)) + " in");
        return inches + " = " + asWas;
    }

    private static String inches(String mm) {
        String plain = mm.replace('−', '-');
        int point = plain.indexOf('.');
        int inMm = point < 0 ? 0 : plain.length() - point - 1;
        int decimals = Math.min(MOST_DECIMALS, inMm <= COARSE ? inMm + 2 : inMm + 1);
        String sign = plain.startsWith("+") ? "+" : "";
        return sign
                + FigureFormat.fixed(
                        Length.ofMillimetres(Double.parseDouble(plain)).inches(), decimals);
    }

    private static String millimetres(MatchResult found) {
        try {
            Length length = Length.parse(found.group().replace('−', '-'), BadInput.in("length"));
            return found.group() + " = " + FigureFormat.fixed(length.millimetres(), 2) + " mm";
        } catch (BadInput e) {
            return found.group(); // not a length after all
        }
    }
}
