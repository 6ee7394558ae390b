package evenblade.base.fact;

import evenblade.base.fact.Value.Amount;

/** What a number measures, with the unit it is kept in. Which unit a reader sees is chosen where it is shown. */
public enum Measure {
    /** Of parts and marks, in m; shown in mm or in. */
    LENGTH,
    /** In degrees. */
    ANGLE,
    /** In kg; shown in g or oz. */
    MASS,
    /** Unbalance in kg·m; shown in g·mm or oz·in. */
    UNBALANCE,
    /** In s. */
    TIME,
    /** In Hz. */
    FREQUENCY,
    /** Samples or rows per second, in Hz. */
    SAMPLE_RATE,
    /** Engine speed in revolutions per minute. */
    ENGINE_RPM,
    /** Propeller speed in revolutions per minute. */
    PROPELLER_RPM,
    /** A share of 1; shown in per cent. */
    SHARE,
    /** A level in dB. */
    LEVEL,
    /** Peak velocity in m/s; shown in mm/s or in/s. */
    VELOCITY,
    /** Peak acceleration in m/s². */
    ACCELERATION,
    /** Peak displacement in m; shown in µm or mil. */
    DISPLACEMENT,
    /** In N. */
    FORCE,
    /** A turning moment in N·m. */
    MOMENT,
    /** A plain number. */
    NUMBER;

    public Amount of(double value) {
        return new Amount(value, this);
    }
}
