package evenblade.base.units;

/** The unit in which a channel's samples, and so the amplitudes of its orders, are given. */
public enum SignalUnit {
    METRE_PER_SECOND_SQUARED("m/s2", Quantity.ACCELERATION, 1.0),
    STANDARD_GRAVITY("g", Quantity.ACCELERATION, 9.80665),
    METRE_PER_SECOND("m/s", Quantity.VELOCITY, 1.0),
    MILLIMETRE_PER_SECOND("mm/s", Quantity.VELOCITY, 1e-3),
    INCH_PER_SECOND("in/s", Quantity.VELOCITY, 0.0254),
    VOLT("V", Quantity.VOLTAGE, 1.0),
    /** A share of the recorder's full scale; nothing is known about what it stands for. */
    FULL_SCALE("FS", Quantity.UNCALIBRATED, 1.0),
    /** A file that gives numbers and no unit. */
    UNSTATED("unstated", Quantity.UNCALIBRATED, 1.0);

    /** What a unit measures. */
    public enum Quantity {
        ACCELERATION,
        VELOCITY,
        VOLTAGE,
        UNCALIBRATED
    }

    private final String symbol;
    private final Quantity quantity;
    private final double siFactor;

    SignalUnit(String symbol, Quantity quantity, double siFactor) {
        this.symbol = symbol;
        this.quantity = quantity;
        this.siFactor = siFactor;
    }

    /** As written in files and JSON. */
    public String symbol() {
        return symbol;
    }

    /** As written for people. */
    public String display() {
        return this == METRE_PER_SECOND_SQUARED ? "m/s²" : symbol;
    }

    public Quantity quantity() {
        return quantity;
    }

    /** How many of the coherent SI unit of the same quantity one of this is. */
    public double siFactor() {
        return siFactor;
    }
}
