package evenblade.tell.document;

import evenblade.base.units.LengthUnit;

/**
 * Peak velocities as a reader writes them: mm/s, or in/s beside lengths in inches.
 *
 * @param lengths of the reader's unit
 */
public record VelocityFigures(FigureFormat lengths) {
    private static final double MM_PER_INCH = 25.4; // exact

    private boolean inches() {
        return lengths.unit() == LengthUnit.INCH;
    }

    public String unit() {
        return inches() ? "in/s" : "mm/s";
    }

    /** The number in the reader's unit. */
    public double shown(double mmS) {
        return inches() ? mmS / MM_PER_INCH : mmS;
    }

    /** With as many decimals in mm/s; in in/s with two more, at most three: 0.1 mm/s is 0.004 in/s. */
    public String fixed(double mmS, int decimals) {
        return FigureFormat.fixed(shown(mmS), inches() ? Math.min(3, decimals + 2) : decimals) + " " + unit();
    }

    /** Three figures that count, without the unit. */
    public String plain(double mmS) {
        return FigureFormat.plain(shown(mmS));
    }

    /** What it lies below, without the unit. */
    public String below(double mmS) {
        return FigureFormat.below(shown(mmS));
    }
}
