package evenblade.tell.report;

import evenblade.base.units.Length;
import evenblade.measure.orders.Level;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Numbers and times as a report writes them. */
final class Amounts {
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm", Locale.ENGLISH);
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);
    private static final double SMALL = 1e-3;
    private static final double LARGE = 1e5;
    private static final double NEARLY_GONE = -95;

    private Amounts() {}

    /** Three figures that count: {@code 0.0123}, {@code 12.3}, {@code 4800}. */
    static String plain(double value) {
        double size = Math.abs(value);
        if (size == 0) {
            return "0";
        }
        if (!Double.isFinite(value)) {
            return "no limit";
        }
        if (size < SMALL || size >= LARGE) {
            return signed(String.format(Locale.ROOT, "%.2e", value));
        }
        return fixed(value, (int) Math.max(0, 2 - Math.floor(Math.log10(size))));
    }

    /** The value to the last place that its error leaves meaningful: {@code 1.234 ± 0.012}. */
    static String withError(double value, double error) {
        if (!(error > 0) || !Double.isFinite(error)) {
            return plain(value);
        }
        double larger = Math.max(Math.abs(value), error);
        if (larger < SMALL || larger >= LARGE) {
            return signed(String.format(Locale.ROOT, "%.2e ± %.1e", value, error));
        }
        int decimals = decimals(error);
        return fixed(value, decimals) + " ± " + fixed(error, decimals);
    }

    /** A line's amplitude ± half its 95 % interval. */
    static String withInterval(Level.Measured level) {
        return withError(level.amplitude(), 0.5 * (level.ciHigh() - level.ciLow()));
    }

    /** Decimals that leave an error two figures, up to six. */
    static int decimals(double error) {
        return (int) Math.min(6, Math.max(0, 1 - Math.floor(Math.log10(error))));
    }

    static String fixed(double value, int decimals) {
        return signed(String.format(Locale.ROOT, "%." + decimals + "f", value));
    }

    /** With a true minus sign, none before a zero. */
    private static String signed(String number) {
        return number.startsWith("-") && number.matches("-[0.]*") ? number.substring(1) : number.replace('-', '−');
    }

    /** With its sign, as a change: {@code +4.2 %}. */
    static String percent(double value) {
        return (value > 0 ? "+" : "") + fixed(value, Math.abs(value) < 10 || value < NEARLY_GONE ? 1 : 0) + " %";
    }

    /** In inches, as a fraction where it is one. */
    static String inches(Length length) {
        String text = signed(length.inchText());
        return text.substring(0, text.length() - " in".length());
    }

    static String minute(OffsetDateTime time) {
        return MINUTE.format(time);
    }

    static String day(OffsetDateTime time) {
        return DAY.format(time);
    }

    static String count(long count, String one) {
        return count == 1 ? "1 " + one : count + " " + one + "s";
    }
}
