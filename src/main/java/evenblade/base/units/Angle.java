package evenblade.base.units;

import evenblade.base.problem.BadInput;
import java.util.Map;

/**
 * An angle.
 *
 * @param degrees the angle in degrees
 */
public record Angle(double degrees) {
    private static final QuantityUnits UNITS = new QuantityUnits(
            "an angle",
            "0.2 deg",
            "deg, ° or arcmin",
            Map.of("deg", 1.0, "°", 1.0, "degrees", 1.0, "arcmin", 1.0 / 60));

    /**
     * Reads {@code 17.4 deg}, {@code 17.4°}, {@code -0.2 deg}, {@code 12 arcmin}.
     *
     * @throws BadInput at the place, where the text is anything else
     */
    public static Angle parse(String text, BadInput.Place place) {
        return new Angle(UNITS.read(text, place));
    }

    /** Reads an angle above zero. */
    public static Angle parsePositive(String text, BadInput.Place place) {
        return new Angle(UNITS.readPositive(text, place));
    }

    /** For files, read back by {@link #parse}. */
    public String text() {
        return QuantityUnits.figures(degrees) + " deg";
    }
}
