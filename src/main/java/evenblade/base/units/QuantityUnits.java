package evenblade.base.units;

import evenblade.base.problem.BadInput;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Map;

/**
 * The units in which one kind of quantity may be written.
 *
 * @param kind what it is, with its article: {@code a length}
 * @param example a text that is accepted
 * @param named the units to name in a refusal
 * @param factors how many of the base unit one of each written unit is
 */
record QuantityUnits(String kind, String example, String named, Map<String, Double> factors) {
    /** Significant figures that every double carries faithfully. */
    private static final MathContext FIGURES = new MathContext(15);

    /** In every base unit far beyond any engine or tool, and near enough that squares and ratios stay numbers. */
    private static final double LARGEST = 1e9;
    /** As far below any of them. */
    private static final double SMALLEST = 1e-12;

    QuantityUnits {
        factors = Map.copyOf(factors);
    }

    /** The value in the base unit; refuses a text without unit or with one of another kind. */
    double read(String text, BadInput.Place place) {
        String expected = kind + " such as \"" + example + "\"";
        QuantityText quantity = QuantityText.parse(text, place, expected);
        if (quantity.unit().isEmpty()) {
            throw place.found(QuantityText.quoted(text) + " without a unit", expected);
        }
        if (!factors.containsKey(quantity.unit())) {
            throw place.found(
                    QuantityText.quoted(text) + " in the unknown unit \"" + quantity.unit() + "\"",
                    kind + " in " + named);
        }
        double value = quantity.value() * factors.get(quantity.unit());
        if (Math.abs(value) > LARGEST || value != 0 && Math.abs(value) < SMALLEST) {
            throw place.found(QuantityText.quoted(text), expected);
        }
        return rounded(value).doubleValue();
    }

    /** The figures to write for a value, so that it reads back as the same number. */
    static String figures(double value) {
        return rounded(value).stripTrailingZeros().toPlainString();
    }

    /** Without the last digit of double precision, where 0.35 × 1 and 350 × 0.001 differ. */
    private static BigDecimal rounded(double value) {
        return new BigDecimal(value).round(FIGURES);
    }

    /** The value in the base unit, which must be above zero. */
    double readPositive(String text, BadInput.Place place) {
        double value = read(text, place);
        if (!(value > 0)) {
            throw place.found(QuantityText.quoted(text), kind + " above zero");
        }
        return value;
    }
}
