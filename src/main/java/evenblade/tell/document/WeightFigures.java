package evenblade.tell.document;

import evenblade.base.units.Length;
import evenblade.base.units.LengthUnit;
import evenblade.base.units.Mass;
import evenblade.judge.balance.Unbalance;

/**
 * Balance weights as a reader writes them: grams and millimetres, or ounces and inches.
 *
 * @param lengths of the reader's unit
 */
public record WeightFigures(FigureFormat lengths) {
    /** Of a reader whose unit isn't known. */
    public static final WeightFigures METRIC = new WeightFigures(new FigureFormat(LengthUnit.MILLIMETRE));

    private static final WeightFigures INCH = new WeightFigures(new FigureFormat(LengthUnit.INCH));

    private boolean inches() {
        return lengths.unit() == LengthUnit.INCH;
    }

    public String massUnit() {
        return inches() ? "oz" : "g";
    }

    /** With two decimals of a gram, or three of an ounce. */
    public String massNumber(double grams) {
        return inches() ? FigureFormat.fixed(Mass.ofGrams(grams).ounces(), 3) : FigureFormat.fixed(grams, 2);
    }

    /** A whole number without decimals. */
    public String shortMass(double grams) {
        return massNumber(grams).replaceFirst("\\.0+$", "");
    }

    public String mass(double grams) {
        return massNumber(grams) + " " + massUnit();
    }

    /** {@code 16.42 g at 60 mm}. */
    public String massAt(double grams, double radiusMm) {
        return mass(grams) + " at " + radius(radiusMm);
    }

    public String radiusNumber(double mm) {
        return inches() ? FigureFormat.fixed(Length.ofMillimetres(mm).inches(), 3) : FigureFormat.fixed(mm, 1);
    }

    public String radius(double mm) {
        return inches() ? radiusNumber(mm) + " in" : FigureFormat.fixed(mm, 0) + " mm";
    }

    public String unbalance(double gmm) {
        return inches()
                ? FigureFormat.fixed(gmm / Unbalance.GMM_PER_OUNCE_INCH, 3) + " oz·in"
                : FigureFormat.fixed(gmm, 0) + " g·mm";
    }

    /** Both units, the reader's first. */
    public String bothUnbalances(double gmm) {
        return unbalance(gmm) + " or " + (inches() ? METRIC : INCH).unbalance(gmm);
    }
}
