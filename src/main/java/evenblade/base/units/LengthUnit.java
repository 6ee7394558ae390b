package evenblade.base.units;

/** The unit in which a reader wants short lengths to be shown first. */
public enum LengthUnit {
    MILLIMETRE("mm"),
    INCH("in");

    private final String sign;

    LengthUnit(String sign) {
        this.sign = sign;
    }

    /** As written behind a number. */
    public String sign() {
        return sign;
    }
}
