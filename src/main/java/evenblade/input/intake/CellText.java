package evenblade.input.intake;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads one cell of a table: a number, a date with time, a time of day, a mark for 'no number', or words. */
final class CellText {
    /** What a cell or a column holds. */
    enum Type {
        NUMBER,
        /** A date with a time of day. */
        DATE_TIME,
        /** A time of day. */
        CLOCK,
        /** A date alone, which tells no samples apart. */
        DATE,
        /** NaN, infinity, or another sign that there is no number. */
        NO_NUMBER,
        EMPTY,
        WORDS;

        boolean stamp() {
            return this == DATE_TIME || this == CLOCK;
        }
    }

    private static final Set<String> NO_NUMBERS =
            Set.of("nan", "inf", "infinity", "∞", "na", "n/a", "null", "none", "-", "--", "#n/a", "1.#qnan", "1.#inf");
    private static final double[] POWERS = new double[23]; // 10⁰ to 10²², which are exact in a double

    static {
        double power = 1;
        for (int i = 0; i < POWERS.length; i++) {
            POWERS[i] = power;
            power *= 10;
        }
    }

    private static final String CLOCK_TEXT = "(\\d{1,3}):(\\d{2}):(\\d{2}(?:[.,:]\\d+)?)";
    private static final Pattern CLOCK = Pattern.compile(CLOCK_TEXT);
    private static final Pattern DATE = Pattern.compile("(\\d{4})[-/.](\\d{1,2})[-/.](\\d{1,2})");
    private static final Pattern DATE_TIME =
            Pattern.compile(DATE.pattern() + "[T_ ]+" + CLOCK_TEXT + " ?(Z|UTC|([+-])(\\d{2}):?(\\d{2})?)?");

    private final boolean decimalComma;

    CellText(boolean decimalComma) {
        this.decimalComma = decimalComma;
    }

    Type type(String cell) {
        String text = cell.strip();
        if (text.isEmpty()) {
            return Type.EMPTY;
        }
        if (!Double.isNaN(number(text))) {
            return Type.NUMBER;
        }
        String lower = text.toLowerCase(Locale.ROOT);
        if (NO_NUMBERS.contains(lower.startsWith("+") || lower.startsWith("-") ? lower.substring(1) : lower)
                || NO_NUMBERS.contains(lower)) {
            return Type.NO_NUMBER;
        }
        if (CLOCK.matcher(text).matches()) {
            return Type.CLOCK;
        }
        if (DATE_TIME.matcher(text).matches()) {
            return Type.DATE_TIME;
        }
        return DATE.matcher(text).matches() ? Type.DATE : Type.WORDS;
    }

    /** The cell as a finite number, or NaN where it is none. */
    double number(String text) {
        int end = text.length();
        int i = 0;
        while (i < end && text.charAt(i) <= ' ') {
            i++;
        }
        while (end > i && text.charAt(end - 1) <= ' ') {
            end--;
        }
        int start = i;
        boolean negative = false;
        if (i < end && (text.charAt(i) == '-' || text.charAt(i) == '+' || text.charAt(i) == '\u2212')) {
            negative = text.charAt(i) != '+';
            i++;
        }
        long mantissa = 0;
        int digits = 0;
        int decimals = 0;
        boolean point = false;
        char sign = decimalComma ? ',' : '.';
        for (; i < end; i++) {
            char c = text.charAt(i);
            if (c >= '0' && c <= '9') {
                mantissa = digits < 18 ? 10 * mantissa + (c - '0') : mantissa;
                digits++;
                decimals += point ? 1 : 0;
            } else if (c == sign && !point) {
                point = true;
            } else {
                break;
            }
        }
        if (digits == 0) {
            return Double.NaN;
        }
        // Exact: both whole numbers are doubles, and one division rounds once.
        if (i == end && mantissa < 1L << 53 && digits <= 18 && decimals < POWERS.length) {
            double value = mantissa / POWERS[decimals];
            return negative ? -value : value;
        }
        return slowNumber(text, start, i, end);
    }

    private double slowNumber(String text, int start, int exponentAt, int end) {
        if (exponentAt < end) {
            char e = text.charAt(exponentAt);
            String exponent = text.substring(exponentAt + 1, end);
            if (e != 'e' && e != 'E' || !exponent.matches("[+-]?\\d{1,4}")) {
                return Double.NaN;
            }
        }
        String plain = text.substring(start, end).replace('\u2212', '-');
        double value = Double.parseDouble(decimalComma ? plain.replace(',', '.') : plain);
        return Double.isFinite(value) ? value : Double.NaN;
    }

    /**
     * Seconds of a date with time or of a time of day, or NaN where the cell is neither.
     *
     * @param firstDay day number (since 1970) that counts as 0, so that fractions keep their digits
     */
    double seconds(String cell, long firstDay) {
        String text = cell.strip();
        Matcher clock = CLOCK.matcher(text);
        if (clock.matches()) {
            return clockSeconds(clock, 1);
        }
        Matcher stamp = DATE_TIME.matcher(text);
        if (!stamp.matches()) {
            return Double.NaN;
        }
        double offset = 0;
        if (stamp.group(8) != null) {
            int minutes = 60 * Integer.parseInt(stamp.group(9))
                    + (stamp.group(10) == null ? 0 : Integer.parseInt(stamp.group(10)));
            offset = (stamp.group(8).equals("-") ? 60.0 : -60.0) * minutes;
        }
        long day = day(stamp);
        return day == NO_DAY ? Double.NaN : (day - firstDay) * 86400.0 + clockSeconds(stamp, 4) + offset;
    }

    /** Day number since 1970 of a cell with a date, 0 where there is none. */
    static long dayOf(String cell) {
        Matcher date = DATE.matcher(cell.strip());
        return date.lookingAt() ? Math.max(0, day(date)) : 0;
    }

    private static final long NO_DAY = Long.MIN_VALUE;

    private static long day(Matcher date) {
        try {
            return LocalDate.of(
                            Integer.parseInt(date.group(1)),
                            Integer.parseInt(date.group(2)),
                            Integer.parseInt(date.group(3)))
                    .toEpochDay();
        } catch (DateTimeException e) {
            return NO_DAY;
        }
    }

    private static double clockSeconds(Matcher matcher, int firstGroup) {
        String seconds = matcher.group(firstGroup + 2).replace(',', '.').replace(':', '.');
        return 3600.0 * Integer.parseInt(matcher.group(firstGroup))
                + 60.0 * Integer.parseInt(matcher.group(firstGroup + 1))
                + Double.parseDouble(seconds);
    }
}
