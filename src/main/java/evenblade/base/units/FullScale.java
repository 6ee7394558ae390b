package evenblade.base.units;

import evenblade.base.problem.BadInput;

/**
 * What the largest storable sample of a recording stands for.
 *
 * @param value above zero, in the unit
 * @param unit the unit that the channel's samples get
 */
public record FullScale(double value, SignalUnit unit) {
    /** Far beyond any sensor, and near enough that squares stay numbers. */
    private static final double LARGEST = 1e9;
    /** As far below any of them. */
    private static final double SMALLEST = 1e-9;

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
        if (!(quantity.value() > SMALLEST && quantity.value() < LARGEST)) {
            throw place.found(QuantityText.quoted(text), "a full scale above zero");
        }
        WrittenSignalUnit written = WrittenSignalUnit.of(quantity.unit())
                .orElseThrow(() -> place.found(
                        QuantityText.quoted(text) + " in the unknown unit \"" + quantity.unit() + "\"",
                        "a full scale in " + WrittenSignalUnit.KNOWN));
        return new FullScale(quantity.value() * written.factor(), written.unit());
    }
}
