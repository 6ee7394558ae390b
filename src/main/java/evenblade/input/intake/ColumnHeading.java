package evenblade.input.intake;

import evenblade.base.units.SignalUnit;
import evenblade.base.units.ValueScale;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What the heading of a column says.
 *
 * @param name without the unit in brackets
 * @param role what the column is by its words and unit
 * @param timeUnit seconds per unit, where the heading gives a unit of time
 * @param unit of a value, where the heading gives one that is known
 * @param factor what the file's numbers are multiplied by to be in that unit
 * @param unitText the unit as written, where there is one
 */
record ColumnHeading(
        String name,
        Role role,
        Optional<Double> timeUnit,
        Optional<SignalUnit> unit,
        double factor,
        Optional<String> unitText) {
    enum Role {
        TIME,
        /** A count of samples, which tells no time. */
        INDEX,
        /** One direction of vibration, as far as can be told. */
        VALUE,
        /** The length of the vector of the axes, in which frequencies are not those of the axes. */
        TOTAL,
        /** Something that isn't vibration: a temperature, a turn rate, a position. */
        FOREIGN,
        /** No words, or words that don't tell. */
        UNKNOWN
    }

    private record ValueUnit(SignalUnit unit, double factor) {}

    private static final Map<String, Double> TIME_UNITS = Map.ofEntries(
            Map.entry("s", 1.0),
            Map.entry("sec", 1.0),
            Map.entry("secs", 1.0),
            Map.entry("second", 1.0),
            Map.entry("seconds", 1.0),
            Map.entry("sekunden", 1.0),
            Map.entry("ms", 1e-3),
            Map.entry("msec", 1e-3),
            Map.entry("millis", 1e-3),
            Map.entry("millisecond", 1e-3),
            Map.entry("milliseconds", 1e-3),
            Map.entry("us", 1e-6),
            Map.entry("usec", 1e-6),
            Map.entry("micros", 1e-6),
            Map.entry("microsecond", 1e-6),
            Map.entry("microseconds", 1e-6),
            Map.entry("ns", 1e-9),
            Map.entry("nsec", 1e-9),
            Map.entry("nanos", 1e-9),
            Map.entry("nanosecond", 1e-9),
            Map.entry("nanoseconds", 1e-9));

    private static final Map<String, ValueUnit> VALUE_UNITS = Map.ofEntries(
            unit("m/s2", SignalUnit.METRE_PER_SECOND_SQUARED, 1),
            unit("m/s/s", SignalUnit.METRE_PER_SECOND_SQUARED, 1),
            unit("ms-2", SignalUnit.METRE_PER_SECOND_SQUARED, 1),
            unit("m/sec2", SignalUnit.METRE_PER_SECOND_SQUARED, 1),
            unit("mps2", SignalUnit.METRE_PER_SECOND_SQUARED, 1),
            unit("ms2", SignalUnit.METRE_PER_SECOND_SQUARED, 1),
            unit("mpss", SignalUnit.METRE_PER_SECOND_SQUARED, 1),
            unit("mm/s2", SignalUnit.METRE_PER_SECOND_SQUARED, 1e-3),
            unit("g", SignalUnit.STANDARD_GRAVITY, 1),
            unit("gs", SignalUnit.STANDARD_GRAVITY, 1),
            unit("gn", SignalUnit.STANDARD_GRAVITY, 1),
            unit("g0", SignalUnit.STANDARD_GRAVITY, 1),
            unit("gee", SignalUnit.STANDARD_GRAVITY, 1),
            unit("mg", SignalUnit.STANDARD_GRAVITY, 1e-3),
            unit("m/s", SignalUnit.METRE_PER_SECOND, 1),
            unit("mps", SignalUnit.METRE_PER_SECOND, 1),
            unit("mm/s", SignalUnit.MILLIMETRE_PER_SECOND, 1),
            unit("mm/sec", SignalUnit.MILLIMETRE_PER_SECOND, 1),
            unit("mmps", SignalUnit.MILLIMETRE_PER_SECOND, 1),
            unit("mms", SignalUnit.MILLIMETRE_PER_SECOND, 1),
            unit("in/s", SignalUnit.INCH_PER_SECOND, 1),
            unit("in/sec", SignalUnit.INCH_PER_SECOND, 1),
            unit("inch/s", SignalUnit.INCH_PER_SECOND, 1),
            unit("ips", SignalUnit.INCH_PER_SECOND, 1),
            unit("v", SignalUnit.VOLT, 1),
            unit("volt", SignalUnit.VOLT, 1),
            unit("volts", SignalUnit.VOLT, 1),
            unit("mv", SignalUnit.VOLT, 1e-3));

    private static final List<String> FOREIGN_UNITS = List.of(
            "c", "degc", "°c", "f", "degf", "°f", "k", "rad/s", "rads", "deg/s", "°/s", "dps", "rad", "deg", "°", "ut",
            "gauss", "pa", "hpa", "kpa", "mbar", "bar", "psi", "%", "hz", "rpm", "1/min", "m", "km/h", "kmh", "kt",
            "kn", "kts", "mph", "lux", "lx", "db", "dba", "a", "ma", "w");

    private static final Pattern BRACKETED = Pattern.compile("[(\\[{<]\\s*([^()\\[\\]{}<>]*?)\\s*[)\\]}>]\\s*$");
    private static final Pattern SUFFIXED =
            Pattern.compile("^(.+?)(?:[_\\s]*/\\s*|[_,\\s]\\s*(?:in\\s+)?)([^_,\\s]+)$");
    private static final Pattern TIME_WORDS = Pattern.compile(
            "t|ts|.*time.*|.*timestamp.*|.*zeit.*|temps|tiempo|tempo|.*elapsed.*|epoch.*|clock|uhrzeit|utc|date|datum"
                    + "|sec|secs|seconds|millis.*|micros.*|nanos.*|ms|us|ns");
    private static final Pattern INDEX_WORDS = Pattern.compile(
            "#|n|i|no|nr|id|idx|index|row|rows|line|count|counter|frame|packet|.*\\bindex|samples?([ _]?(no|nr|number|count|id|index|#))?\\.?");
    private static final Pattern TOTAL_WORDS = Pattern.compile(
            ".*\\b(total|absolute|abs|magnitude|norm|resultant|result|vector|vectorsum|sum|overall|betrag|gesamt|rss)\\b.*"
                    + "|tgf|\\|.*\\||.*(total|magnitude|absolute)");
    /** Quantities that recorders of engines and flights write beside vibration, as whole words. */
    private static final Pattern FOREIGN_WORDS = Pattern.compile(
            "(.*\\b)?(rpm|drehzahl|egt|cht|oat|iat|temp|temps?[0-9]+|temperatures?|temperatur|humidity|pressure|press|map|oil|fuel|flow|throttle"
                    + "|lat|latitude|lon|lng|longitude|alt|altitude|height|heading|course|airspeed|ias|tas|groundspeed"
                    + "|battery|bat|vbat|gyro|gyr|gyroscope|magnetometer|light|lux)(\\b.*)?");

    private static final Pattern G_FORCE = Pattern.compile("t?gf[xyz]?");

    private static Map.Entry<String, ValueUnit> unit(String written, SignalUnit unit, double factor) {
        return Map.entry(written, new ValueUnit(unit, factor));
    }

    /** Reads a heading; a blank one is {@link Role#UNKNOWN}. */
    static ColumnHeading of(String heading) {
        String text = heading.strip();
        Matcher bracketed = BRACKETED.matcher(text);
        if (bracketed.find()) {
            String name = text.substring(0, bracketed.start()).strip().replaceAll("[_/,:]+$", "");
            return withUnit(name.isEmpty() ? text : name, bracketed.group(1));
        }
        Matcher suffixed = SUFFIXED.matcher(text);
        if (suffixed.matches() && unitAsSuffix(plain(suffixed.group(2)), suffixed.group(1))) {
            return withUnit(text, suffixed.group(2));
        }
        if (TIME_UNITS.containsKey(plain(text))) {
            return withUnit(text, text);
        }
        if (G_FORCE.matcher(plain(text)).matches()) {
            return withUnit(text, "g");
        }
        return withoutUnit(text);
    }

    /** As a column of values of which that is said. */
    ColumnHeading said(Optional<String> channel, Optional<ValueScale> scale) {
        return new ColumnHeading(
                channel.orElse(name),
                role == Role.TOTAL ? Role.TOTAL : Role.VALUE,
                Optional.empty(),
                scale.map(ValueScale::unit).or(() -> unit),
                scale.map(ValueScale::value).orElse(factor),
                scale.map(each -> each.unit().symbol()).or(() -> unitText));
    }

    /** As the column of the time. */
    ColumnHeading saidTime() {
        return new ColumnHeading(name, Role.TIME, timeUnit, Optional.empty(), 1, unitText);
    }

    /** Single letters behind a name are taken for a unit only where nothing else is likely. */
    private static boolean unitAsSuffix(String unit, String name) {
        return VALUE_UNITS.containsKey(unit)
                || TIME_UNITS.containsKey(unit) && (unit.length() > 1 || roleOf(name) == Role.TIME)
                || FOREIGN_UNITS.contains(unit) && unit.length() > 2;
    }

    private static boolean known(String unit) {
        return TIME_UNITS.containsKey(unit) || VALUE_UNITS.containsKey(unit) || FOREIGN_UNITS.contains(unit);
    }

    private static ColumnHeading withUnit(String name, String written) {
        String unit = plain(written);
        Role words = roleOf(name);
        Optional<Double> timeUnit = Optional.ofNullable(TIME_UNITS.get(unit));
        if (timeUnit.isPresent() && words != Role.INDEX) {
            return new ColumnHeading(name, Role.TIME, timeUnit, Optional.empty(), 1, Optional.of(written));
        }
        ValueUnit value = VALUE_UNITS.get(unit);
        if (value != null) {
            Role role = words == Role.TOTAL ? Role.TOTAL : Role.VALUE;
            return new ColumnHeading(
                    name, role, Optional.empty(), Optional.of(value.unit()), value.factor(), Optional.of(written));
        }
        Role role = FOREIGN_UNITS.contains(unit) ? Role.FOREIGN : words;
        return new ColumnHeading(
                name,
                role,
                Optional.empty(),
                Optional.empty(),
                1,
                Optional.of(written).filter(w -> !w.isEmpty()));
    }

    private static ColumnHeading withoutUnit(String name) {
        Role role = roleOf(name);
        Optional<String> word = Arrays.stream(name.split("[_\\s]+"))
                .filter(w -> role == Role.TIME && TIME_UNITS.containsKey(plain(w)) && w.length() > 1)
                .findFirst();
        return new ColumnHeading(name, role, word.map(w -> TIME_UNITS.get(plain(w))), Optional.empty(), 1, word);
    }

    private static Role roleOf(String name) {
        String lower = name.strip().toLowerCase(Locale.ROOT);
        String words = lower.replace('_', ' ');
        if (lower.isEmpty()) {
            return Role.UNKNOWN;
        }
        if (TIME_WORDS.matcher(lower).matches()) {
            return Role.TIME;
        }
        if (INDEX_WORDS.matcher(words).matches()) {
            return Role.INDEX;
        }
        if (TOTAL_WORDS.matcher(words).matches()) {
            return Role.TOTAL;
        }
        return FOREIGN_WORDS.matcher(words).matches() ? Role.FOREIGN : Role.UNKNOWN;
    }

    /** A unit in small letters, with superscripts and other writings brought to one. */
    private static String plain(String written) {
        return written.strip()
                .toLowerCase(Locale.ROOT)
                .replace("â²", "2")
                .replace("âµ", "u")
                .replace('²', '2')
                .replace("⁻", "-")
                .replace('\u2212', '-')
                .replace('µ', 'u')
                .replace('μ', 'u')
                .replaceAll("\\*\\*|\\^|'", "")
                .replaceAll("[·*.\\s]+", "")
                .replace("inches", "inch");
    }

    /** Whether the text is nothing but a unit, as in a second heading line. */
    static boolean unitOnly(String text) {
        String inner = text.strip().replaceAll("^[(\\[]|[)\\]]$", "");
        return known(plain(inner));
    }
}
