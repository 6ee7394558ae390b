package evenblade.face.app;

import evenblade.base.units.Length;
import evenblade.base.units.LengthUnit;
import evenblade.base.units.Mass;
import evenblade.judge.balance.Unbalance;
import evenblade.tell.document.FigureFormat;
import java.util.Locale;

/**
 * Balance weights as a reader writes them: grams and millimetres, or ounces and inches.
 *
 * @param lengths of the reader's unit
 */
record WeightFigures(FigureFormat lengths) {
    /** Of a reader whose unit isn't known. */
    static final WeightFigures METRIC = new WeightFigures(new FigureFormat(LengthUnit.MILLIMETRE));

    private static final WeightFigures INCH = new WeightFigures(new FigureFormat(LengthUnit.INCH));

    private boolean inches() {
        return lengths.unit() == LengthUnit.INCH;
    }

    String massUnit() {
        return inches() ? "oz" : "g";
    }

    /** With two decimals of a gram, or three of an ounce. */
    String massNumber(double grams) {
        return inches() ? text("%.3f", Mass.ofGrams(grams).ounces()) : text("%.2f", grams);
    }

    /** A whole number without decimals. */
    String shortMass(double grams) {
        return massNumber(grams).replaceFirst("\\.0+$", "");
    }

    String mass(double grams) {
        return massNumber(grams) + " " + massUnit();
    }

    /** {@code 16.42 g at 60 mm}. */
    String massAt(double grams, double radiusMm) {
        return mass(grams) + " at " + radius(radiusMm);
    }

    String radiusNumber(double mm) {
        return inches() ? text("%.3f", Length.ofMillimetres(mm).inches()) : text("%.1f", mm);
    }

    String radius(double mm) {
        return inches() ? radiusNumber(mm) + " in" : text("%.0f mm", mm);
    }

    String unbalance(double gmm) {
        return inches() ? text("%.3f oz·in", gmm / Unbalance.GMM_PER_OUNCE_INCH) : text("%.0f g·mm", gmm);
    }

    /** Both units, the reader's first. */
    String bothUnbalances(double gmm) {
        return unbalance(gmm) + " or " + (inches() ? METRIC : INCH).unbalance(gmm);
    }

    private static String text(String form, Object... values) {
        return String.format(Locale.ROOT, form, values);
    }
}
