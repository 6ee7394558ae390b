package evenblade.base.units;

import evenblade.base.problem.BadInput;
import java.math.BigDecimal;

/**
 * What a 1 in a file's numbers stands for.
 *
 * @param value above zero, in the unit
 * @param unit the unit that the channel's samples get
 */
public record ValueScale(double value, SignalUnit unit) {
    /**
     * Reads {@code m/s2}, {@code 0.01 m/s2}, {@code mg}, {@code 2.5 mV}.
     *
     * @throws BadInput at the place, where the text is anything else or not above zero
     */
    public static ValueScale parse(String text, BadInput.Place place) {
        String expected = "what a 1 in the file stands for, such as \"0.01 m/s2\" or \"g\"";
        String stripped = text.strip();
        boolean bare = !stripped.isEmpty() && Character.isLetter(stripped.charAt(0));
        QuantityText quantity = QuantityText.parse(bare ? "1 " + stripped : text, place, expected);
        if (quantity.unit().isEmpty()) {
            throw place.found(QuantityText.quoted(text) + " without a unit", expected);
        }
        if (!(quantity.value() > 0)) {
            throw place.found(QuantityText.quoted(text), "a number above zero with a unit");
        }
        WrittenSignalUnit written = WrittenSignalUnit.of(quantity.unit())
                .orElseThrow(() -> place.found(
                        QuantityText.quoted(text) + " in the unknown unit \"" + quantity.unit() + "\"",
                        "a unit of " + WrittenSignalUnit.KNOWN));
        return new ValueScale(quantity.value() * written.factor(), written.unit());
    }

    /** As {@link #parse} reads it, to the last digit. */
    public String text() {
        return value == 1
                ? unit.symbol()
                : BigDecimal.valueOf(value).stripTrailingZeros().toPlainString() + " " + unit.symbol();
    }
}
