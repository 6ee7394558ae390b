package evenblade.units;

import evenblade.problem.BadInput;
import java.util.List;

/**
 * What the largest storable sample of a recording stands for.
 *
 * @param value above zero, in the unit
 * @param unit the unit that the channel's samples get
 */
public record FullScale(double value, SignalUnit unit) {
    /** A unit as written, the unit it stands for, and how many of that one it is. */
    private record Written(String text, SignalUnit unit, double factor) {}

    private static final List<Written> WRITTEN = List.of(
            new Written("m/s2", SignalUnit.METRE_PER_SECOND_SQUARED, 1),
            new Written("m/s²", SignalUnit.METRE_PER_SECOND_SQUARED, 1),
            new Written("m/s^2", SignalUnit.METRE_PER_SECOND_SQUARED, 1),
            new Written("m/s/s", SignalUnit.METRE_PER_SECOND_SQUARED, 1),
            new Written("g", SignalUnit.STANDARD_GRAVITY, 1),
            new Written("mg", SignalUnit.STANDARD_GRAVITY, 1e-3),
            new Written("m/s", SignalUnit.METRE_PER_SECOND, 1),
            new Written("mm/s", SignalUnit.MILLIMETRE_PER_SECOND, 1),
            new Written("in/s", SignalUnit.INCH_PER_SECOND, 1),
            new Written("ips", SignalUnit.INCH_PER_SECOND, 1),
            new Written("V", SignalUnit.VOLT, 1),
            new Written("mV", SignalUnit.VOLT, 1e-3));

    /**
     * Reads {@code 50 m/s2}, {@code 8 g}, {@code 2 V}, {@code 20 mm/s}, {@code 500 mV}.
     *
     * @throws BadInput at the place, where the text is anything else or not above zero
     */
    public static FullScale parse(String text, BadInput.Place place) {
        String expected = "a full scale such as \"50 m/s2\"";
        QuantityText quantity = QuantityText.parse(text, place, expected);
        if (quantity.unit().isEmpty()) {
            throw place.found(QuantityText.quoted(text) + " without a unit", expected);
        }
        if (!(quantity.value() > 0)) {
            throw place.found(QuantityText.quoted(text), "a full scale above zero");
        }
        for (Written written : WRITTEN) {
            if (written.text().equals(quantity.unit())) {
                return new FullScale(quantity.value() * written.factor(), written.unit());
            }
        }
        throw place.found(
                QuantityText.quoted(text) + " in the unknown unit \"" + quantity.unit() + "\"",
                "a full scale in m/s2, g, mm/s, m/s, in/s or V");
    }
}
