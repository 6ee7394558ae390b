package evenblade.base.units;

import evenblade.base.problem.BadInput;
import java.util.Map;

/**
 * A length.
 *
 * @param metres the length in metres
 */
public record Length(double metres) {
    /** Exactly, by the definition of the inch. */
    private static final double METRES_PER_INCH = 0.0254;

    /** The finest fraction of an inch that is marked on a rule. */
    private static final int FINEST_FRACTION = 64;

    private static final QuantityUnits UNITS = new QuantityUnits(
            "a length",
            "3/16 in",
            "m, cm, mm, µm, in or ft",
            Map.ofEntries(
                    Map.entry("m", 1.0),
                    Map.entry("cm", 0.01),
                    Map.entry("mm", 0.001),
                    Map.entry("µm", 1e-6), // micro sign
                    Map.entry("μm", 1e-6), // Greek letter mu
                    Map.entry("um", 1e-6),
                    Map.entry("in", METRES_PER_INCH),
                    Map.entry("inch", METRES_PER_INCH),
                    Map.entry("inches", METRES_PER_INCH),
                    Map.entry("\"", METRES_PER_INCH),
                    Map.entry("ft", 12 * METRES_PER_INCH)));

    public static Length ofMetres(double metres) {
        return new Length(metres);
    }

    public static Length ofMillimetres(double millimetres) {
        return new Length(millimetres / 1000);
    }

    public static Length ofInches(double inches) {
        return new Length(inches * METRES_PER_INCH);
    }

    /**
     * Reads {@code 1.70 m}, {@code 68 in}, {@code 3/16 in}, {@code 1 3/16 in}, {@code -0.2 mm}.
     *
     * @throws BadInput at the place, where the text is anything else
     */
    public static Length parse(String text, BadInput.Place place) {
        return new Length(UNITS.read(text, place));
    }

    /** Reads a length above zero. */
    public static Length parsePositive(String text, BadInput.Place place) {
        return new Length(UNITS.readPositive(text, place));
    }

    public double millimetres() {
        return metres * 1000;
    }

    public double inches() {
        return metres / METRES_PER_INCH;
    }

    /** For files, read back by {@link #parse}: in mm below 1 m, else in m. */
    public String text() {
        return Math.abs(metres) < 1
                ? QuantityUnits.figures(millimetres()) + " mm"
                : QuantityUnits.figures(metres) + " m";
    }

    /**
     * In inches for people: a fraction where it is a whole number of 64ths ({@code 1 3/16 in}), else
     * to a thousandth ({@code 0.110 in}).
     */
    public String inchText() {
        double parts = inches() * FINEST_FRACTION;
        if (Math.abs(parts - Math.rint(parts)) > 1e-6) {
            return String.format(java.util.Locale.ROOT, "%.3f in", inches());
        }
        long whole = Math.abs(Math.round(parts)) / FINEST_FRACTION;
        long top = Math.abs(Math.round(parts)) % FINEST_FRACTION;
        long bottom = FINEST_FRACTION;
        while (top != 0 && top % 2 == 0) {
            top /= 2;
            bottom /= 2;
        }
        String fraction = top == 0 ? "" : top + "/" + bottom;
        String join = whole > 0 && top > 0 ? " " : "";
        String size = (whole > 0 || top == 0 ? String.valueOf(whole) : "") + join + fraction;
        return (metres < 0 ? "-" : "") + size + " in";
    }
}
