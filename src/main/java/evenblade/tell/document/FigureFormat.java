package evenblade.tell.document;

import evenblade.base.fact.Measure;
import evenblade.base.fact.Value.Amount;
import evenblade.base.fact.Value.Estimated;
import evenblade.base.units.Length;
import evenblade.base.units.LengthUnit;
import evenblade.measure.orders.Level;
import evenblade.measure.speed.Dwell;
import java.math.BigDecimal;
import java.math.MathContext;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * Numbers, lengths and times as people read them: the same in every face. A figure gets no more digits than its error
 * leaves meaning; a zero has no sign; a minus is a true minus.
 *
 * @param unit of lengths that comes first
 */
public record FigureFormat(LengthUnit unit) {
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm", Locale.ENGLISH);
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);
    /** Below this a row of zeros is harder to read than a power of ten. */
    private static final double SMALL = 1e-6;
    /** From here on a power of ten is shorter than its digits; no speed or frequency of an engine is so large. */
    private static final double LARGE = 1e5;
    /** An error below the ninth decimal is shown by a power of ten. */
    private static final int MOST_DECIMALS = 9;
    /** No throttle is held better than to a hundredth of a turn per minute. */
    private static final int MOST_RPM_DECIMALS = 2;
    /** Half the width of a 95 % interval in standard errors, of the normal distribution. */
    public static final double NINETY_FIVE = 1.96;

    private static final double SECONDS_PER_MINUTE = 60; // exact
    /** Rounds to two figures: 9.95 would become 10.0. */
    private static final double ONE_DECIMAL_BELOW = 9.95;
    /** So near to all gone, a whole per cent hides whether half of it or double is left. */
    private static final double NEARLY_GONE = -95;
    /** A change from next to nothing is shown in times, not in per cent. */
    private static final double IN_TIMES_FROM = 1000;
    /** A dial reads half a thousandth; below one, three decimals would show none. */
    private static final double LEAST_INCHES = 0.001;
    /** Nothing can fall by more. */
    private static final double ALL_GONE = -100;

    /** With that many decimals. */
    public static String fixed(double value, int decimals) {
        return signed(String.format(Locale.ROOT, "%." + decimals + "f", value));
    }

    /** With a plus before what is above zero, for what lies off a mean. */
    public static String offset(double value, int decimals) {
        String text = fixed(value, decimals);
        return text.startsWith("−") || text.matches("[0.]*") ? text : "+" + text;
    }

    /** Decimals that show two figures of an error; three where there is none. */
    public static int decimals(double error) {
        if (!(error > 0) || Double.isInfinite(error)) {
            return 3;
        }
        return (int) Math.max(0, Math.min(MOST_DECIMALS, 1 - Math.floor(Math.log10(error))));
    }

    /** Three figures that count, for what has no error: {@code 0.0123}, {@code 12.3}, {@code 4800}. */
    public static String plain(double value) {
        return figures(value, 3);
    }

    /** Two figures, for a size that is only roughly known. */
    public static String rough(double value) {
        return figures(value, 2);
    }

    private static String figures(double value, int count) {
        double size = Math.abs(value);
        if (!Double.isFinite(value)) {
            return "no limit";
        }
        if (size == 0) {
            return "0";
        }
        if (size < SMALL || size >= LARGE) {
            return signed(String.format(Locale.ROOT, "%." + (count - 1) + "e", value));
        }
        return fixed(value, (int) Math.max(0, count - 1 - Math.floor(Math.log10(size))));
    }

    /** With so many figures, zeros at the end too: {@code 2.000}. */
    public static String significant(double value, int count) {
        return signed(String.format(Locale.ROOT, "%." + count + "g", value));
    }

    /** The value to the last place that its error leaves meaningful: {@code 1.234}. */
    public static String value(double value, double error) {
        return !(error > 0) || !Double.isFinite(error) || tiny(value, error)
                ? plain(value)
                : fixed(value, decimals(error));
    }

    /** The error that goes with {@link #value}: two figures of it, or that it isn't known. */
    public static String error(double value, double error) {
        if (!Double.isFinite(error)) {
            return "not known";
        }
        return tiny(value, error) ? rough(error) : fixed(error, decimals(error));
    }

    /** Both: {@code 1.234 ± 0.012}. */
    public static String withError(double value, double error) {
        return error > 0 && Double.isFinite(error) ? value(value, error) + " ± " + error(value, error) : plain(value);
    }

    private static boolean tiny(double value, double error) {
        double larger = Math.max(Math.abs(value), error);
        return larger < SMALL || larger >= LARGE;
    }

    /** A line's amplitude with half its 95 % interval, or what it lies below. */
    public static String level(Level.Measured level) {
        return level.detected() ? withError(level.amplitude(), half(level)) : below(limit(level));
    }

    /** Half of a line's 95 % interval. */
    public static double half(Level.Measured level) {
        return (level.ciHigh() - level.ciLow()) / 2;
    }

    /** What an undetected line lies below; a lucky quiet spell doesn't make the fit better than its error. */
    public static double limit(Level.Measured level) {
        return Math.max(level.ciHigh(), 2 * level.standardError());
    }

    /** What isn't seen, and how large it may be at most: {@code below 0.0018}. */
    public static String below(double limit) {
        return "below " + rough(limit);
    }

    /** A range with the decimals that its width leaves meaning: {@code 0.597 to 0.612}. */
    public static String range(double low, double high) {
        if (!Double.isFinite(high)) {
            return plain(low) + " or more";
        }
        return high > low
                ? fixed(low, decimals((high - low) / 2)) + " to " + fixed(high, decimals((high - low) / 2))
                : plain(low) + " to " + plain(high);
    }

    /** A size with its range: {@code 0.31 (0.28 to 0.34)}. */
    public static String withRange(double value, double low, double high) {
        return Double.isFinite(high) && high > low
                ? fixed(value, decimals((high - low) / 2)) + " (" + range(low, high) + ")"
                : plain(value) + " (" + range(low, high) + ")";
    }

    /** A change: {@code +4.2 %}. */
    public static String percent(double value) {
        return offset(value, Math.abs(value) < ONE_DECIMAL_BELOW || value < NEARLY_GONE ? 1 : 0) + " %";
    }

    /** The size of a change whose direction is said in words: {@code 4.2 %}, or {@code 12 times} from next to nothing. */
    public static String change(double percent) {
        return percent < IN_TIMES_FROM
                ? percent(percent).replaceFirst("^[+−]", "")
                : fixed(1 + percent / 100, 0) + " times";
    }

    /** The interval of a change: {@code −12 % to +4.1 %}. */
    public static String percentRange(OptionalDouble low, OptionalDouble high) {
        boolean open = low.isEmpty() || low.getAsDouble() <= ALL_GONE;
        if (open && high.isEmpty()) {
            return "not known";
        }
        if (high.isEmpty()) {
            return percent(low.getAsDouble()) + " or more";
        }
        return open
                ? percent(high.getAsDouble()) + " or lower"
                : percent(low.getAsDouble()) + " to " + percent(high.getAsDouble());
    }

    /** A share of 1 in whole per cent. */
    public static String share(double share) {
        return fixed(100 * share, 0) + " %";
    }

    /** A dwell's speed, of the engine with its ratio, of the propeller with 1: {@code 5310.62 ± 0.03 rpm}. */
    public static String rpm(Dwell dwell, double standardErrorHz, double ratio) {
        double error = NINETY_FIVE * SECONDS_PER_MINUTE * standardErrorHz * ratio;
        int decimals = error > 0 ? Math.min(MOST_RPM_DECIMALS, decimals(error)) : MOST_RPM_DECIMALS;
        double shown = Math.max(error, 0.5 * Math.pow(10, -decimals));
        return fixed(dwell.propellerRpm() * ratio, decimals) + " ± " + fixed(shown, decimals) + " rpm";
    }

    /** A speed without its error, in whole turns per minute. */
    public static String rpm(double rpm) {
        return fixed(rpm, 0);
    }

    /** A sample rate in whole Hz where it is whole. */
    public static String sampleRate(double hz) {
        return fixed(hz, hz % 1 == 0 ? 0 : 2);
    }

    /** A length in both units: {@code 4.76 mm (3/16 in)} or {@code 3/16 in (4.76 mm)}. */
    public String both(Length length) {
        return unit == LengthUnit.INCH
                ? inches(length) + " in (" + millimetres(length) + " mm)"
                : millimetres(length) + " mm (" + inches(length) + " in)";
    }

    /** A length in both units; anything else in its own. */
    String both(Amount amount) {
        return amount.measure() == Measure.LENGTH ? both(Length.ofMetres(amount.value())) : text(amount, 2);
    }

    /** A number of millimetres in both units. */
    public String both(double millimetres) {
        return both(Length.ofMillimetres(millimetres));
    }

    /** A large length in both units: {@code 1.700 m (66.93 in)} or the other way round. */
    public String large(Length length) {
        String metres = fixed(length.metres(), 3) + " m";
        String inches = fixed(length.inches(), 2) + " in";
        return unit == LengthUnit.INCH ? inches + " (" + metres + ")" : metres + " (" + inches + ")";
    }

    /** In the first unit alone, with its sign: {@code 4.76 mm}. */
    public String first(double millimetres) {
        return number(millimetres) + " " + unit.sign();
    }

    /** In the first unit alone, without its sign, for the cells of a table. */
    public String number(double millimetres) {
        return number(millimetres, unit);
    }

    /** In a unit, without its sign. */
    public static String number(double millimetres, LengthUnit unit) {
        Length length = Length.ofMillimetres(millimetres);
        return unit == LengthUnit.INCH ? inches(length) : millimetres(length);
    }

    /** How far off a mean, in the first unit, without its sign: {@code +0.52}. */
    public String offset(double millimetres) {
        return unit == LengthUnit.INCH
                ? offset(Length.ofMillimetres(millimetres).inches(), 3)
                : offset(millimetres, 2);
    }

    private static String millimetres(Length length) {
        // A dial reads hundredths; what lies under a tenth needs the thousandth.
        return fixed(length.millimetres(), 2);
    }

    private static String inches(Length length) {
        double inches = Math.abs(length.inches());
        if (inches > 0 && inches < LEAST_INCHES) {
            return fixed(length.inches(), 4);
        }
        String text = signed(length.inchText());
        return text.substring(0, text.length() - " in".length());
    }

    /** A time to the minute, as its clock showed it. */
    public static String minute(OffsetDateTime time) {
        return MINUTE.format(time);
    }

    /** A time to the minute in UTC. */
    public static String minute(Instant time) {
        return MINUTE.format(time.atOffset(ZoneOffset.UTC));
    }

    public static String day(OffsetDateTime time) {
        return DAY.format(time);
    }

    /** {@code 1 run}, {@code 2 runs}. */
    public static String count(long count, String one) {
        return count == 1 ? "1 " + one : count + " " + one + "s";
    }

    /** A time with three figures in the unit that suits it: {@code 2.4 ms}. */
    public static String duration(double seconds) {
        return seconds >= 1
                ? threeFigures(seconds) + " s"
                : seconds >= 1e-3 ? threeFigures(1e3 * seconds) + " ms" : threeFigures(1e6 * seconds) + " µs";
    }

    private static String threeFigures(double value) {
        return new BigDecimal(value)
                .round(new MathContext(3))
                .stripTrailingZeros()
                .toPlainString();
    }

    /** The first letter large, as at the start of a sentence. */
    public static String capital(String text) {
        return text.isEmpty() ? text : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }

    /** With a true minus sign, none before a zero. */
    private static String signed(String number) {
        return number.startsWith("-") && number.matches("-[0.]*") ? number.substring(1) : number.replace('-', '−');
    }

    /** What was measured with its unit, as a figure of its kind is usually written. */
    public String text(Amount amount) {
        // A share below a tenth of a per cent would be shown as none.
        boolean small = amount.measure() == Measure.SHARE && amount.value() < 0.001;
        return text(amount, small ? 3 : decimals(amount.measure()));
    }

    /** With its unit and so many decimals. */
    public String text(Amount amount, int decimals) {
        if (unit == LengthUnit.INCH && amount.measure() == Measure.MASS) {
            return new WeightFigures(this).mass(shown(amount));
        }
        if (unit == LengthUnit.INCH && amount.measure() == Measure.UNBALANCE) {
            return new WeightFigures(this).unbalance(shown(amount));
        }
        if (amount.measure() == Measure.VELOCITY) {
            return new VelocityFigures(this).fixed(shown(amount), decimals);
        }
        String number = fixed(shown(amount), decimals) + unit(amount.measure());
        return amount.measure() == Measure.LENGTH && unit == LengthUnit.INCH
                ? fixed(Length.ofMetres(amount.value()).inches(), inchDecimals(decimals)) + " in (" + number + ")"
                : number;
    }

    /** With its interval. */
    public String text(Estimated estimated) {
        Measure measure = estimated.measure();
        return text(new Amount(estimated.value(), measure)) + " ("
                + fixed(shown(new Amount(estimated.low(), measure)), decimals(measure)) + " to "
                + fixed(shown(new Amount(estimated.high(), measure)), decimals(measure)) + ")";
    }

    /** With half its interval, and a plus before what is above zero where that is wanted. */
    public String withError(Estimated estimated, int decimals, boolean signed) {
        Measure measure = estimated.measure();
        double half = estimated.high() - estimated.value();
        String number =
                pair(shown(new Amount(estimated.value(), measure)), shown(new Amount(half, measure)), decimals, signed)
                        + unit(measure);
        return measure == Measure.LENGTH && unit == LengthUnit.INCH
                ? pair(
                                Length.ofMetres(estimated.value()).inches(),
                                Length.ofMetres(half).inches(),
                                inchDecimals(decimals),
                                signed)
                        + " in (" + number + ")"
                : number;
    }

    private static String pair(double value, double half, int decimals, boolean signed) {
        return (signed ? offset(value, decimals) : fixed(value, decimals)) + " ± " + fixed(half, decimals);
    }

    /** Whole millimetres and tenths get two figures more in inches, finer ones one: 0.001 in is 0.0254 mm. */
    private static int inchDecimals(int decimals) {
        return decimals <= 1 ? decimals + 2 : decimals + 1;
    }

    /** The number in the unit that is shown. */
    double shown(Amount amount) {
        return switch (amount.measure()) {
            case LENGTH, MASS, VELOCITY -> 1e3 * amount.value();
            case UNBALANCE, DISPLACEMENT -> 1e6 * amount.value();
            case SHARE -> 100 * amount.value();
            default -> amount.value();
        };
    }

    /** The unit with the space before it. */
    static String unit(Measure measure) {
        return switch (measure) {
            case LENGTH -> " mm";
            case ANGLE -> "°";
            case MASS -> " g";
            case UNBALANCE -> " g·mm";
            case TIME -> " s";
            case FREQUENCY -> " Hz";
            case SAMPLE_RATE -> " samples per second";
            case ENGINE_RPM, PROPELLER_RPM -> " rpm";
            case SHARE -> " %";
            case LEVEL -> " dB";
            case VELOCITY -> " mm/s";
            case ACCELERATION -> " m/s²";
            case DISPLACEMENT -> " µm";
            case FORCE -> " N";
            case MOMENT -> " N·m";
            case NUMBER -> "";
        };
    }

    private static int decimals(Measure measure) {
        return switch (measure) {
            case UNBALANCE, ENGINE_RPM, PROPELLER_RPM -> 0;
            case LENGTH, VELOCITY -> 2;
            default -> 1;
        };
    }
}
