package evenblade.judge.balance;

import evenblade.base.fact.Code;
import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Value;

/**
 * Why no correction is given, or what has to be said before one. Runs are counted from 1 in the order of the readings.
 *
 * @param code what it is
 * @param fact the same with what it rests on
 */
public record Objection(ObjectionCode code, Fact fact) {
    public static Objection of(ObjectionCode code, Value... values) {
        return new Objection(code, Fact.of(code, values));
    }

    /** A reading past its limit, both in m or degrees. */
    public static Objection beyondLimit(Property property, double measured, double allowed) {
        Measure measure = property == Property.PITCH ? Measure.ANGLE : Measure.LENGTH;
        return of(ObjectionCode.BEYOND_LIMIT_FIRST, Fact.of(property), measure.of(measured), measure.of(allowed));
    }

    static Value grams(double mass) {
        return Measure.MASS.of(1e-3 * mass);
    }

    static Value millimetres(double length) {
        return Measure.LENGTH.of(1e-3 * length);
    }

    static Value gramMillimetres(double unbalance) {
        return Measure.UNBALANCE.of(1e-6 * unbalance);
    }

    /** What a limit is about. */
    public enum Property implements Code {
        TRACK,
        PITCH,
        RUN_OUT
    }

    /** What about the sensor was another. */
    public enum SensorAspect implements Code {
        PLACE,
        DIRECTION,
        GAIN
    }

    /** What some objections go on with. */
    public enum BalanceFact implements Code {
        WEIGHT_TO_TAKE,
        WEIGHT_NOT_ALLOWED,
        CLOSURE_OFF,
        NO_UNBALANCE_FITS,
        ONE_SHAFT,
        AS_USUAL,
        SEEN_IN_PART
    }
}
