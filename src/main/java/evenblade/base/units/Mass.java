package evenblade.base.units;

import evenblade.base.problem.BadInput;
import java.util.Map;

/**
 * A mass.
 *
 * @param kilograms the mass in kilograms
 */
public record Mass(double kilograms) {
    /** Exactly, by the definition of the avoirdupois pound. */
    private static final double KILOGRAMS_PER_POUND = 0.45359237;
    /** A sixteenth of a pound. */
    private static final double KILOGRAMS_PER_OUNCE = KILOGRAMS_PER_POUND / 16;

    private static final QuantityUnits UNITS = new QuantityUnits(
            "a mass",
            "2.1 kg",
            "kg, g, lb or oz",
            Map.of("kg", 1.0, "g", 0.001, "lb", KILOGRAMS_PER_POUND, "oz", KILOGRAMS_PER_OUNCE));

    /**
     * Reads {@code 2.1 kg}, {@code 15 g}, {@code 1/2 oz}; refused unless above zero.
     *
     * @throws BadInput at the place, where the text is anything else
     */
    public static Mass parsePositive(String text, BadInput.Place place) {
        return new Mass(UNITS.readPositive(text, place));
    }

    public static Mass ofGrams(double grams) {
        return new Mass(grams / 1000);
    }

    public double grams() {
        return kilograms * 1000;
    }

    public double ounces() {
        return kilograms / KILOGRAMS_PER_OUNCE;
    }

    /** For files, read back by {@link #parsePositive}: in g below 1 kg, else in kg. */
    public String text() {
        return kilograms < 1 ? QuantityUnits.figures(grams()) + " g" : QuantityUnits.figures(kilograms) + " kg";
    }
}
