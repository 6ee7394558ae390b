package evenblade.units;

/**
 * A length.
 *
 * @param metres the length in metres
 */
public record Length(double metres) {
    /** Exactly, by the definition of the inch. */
    private static final double METRES_PER_INCH = 0.0254;

    public static Length ofMetres(double metres) {
        return new Length(metres);
    }

    public static Length ofMillimetres(double millimetres) {
        return new Length(millimetres / 1000);
    }

    public static Length ofInches(double inches) {
        return new Length(inches * METRES_PER_INCH);
    }

    public double millimetres() {
        return metres * 1000;
    }

    public double inches() {
        return metres / METRES_PER_INCH;
    }
}
