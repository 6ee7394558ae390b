package evenblade.judge.comparison;

import evenblade.base.fact.Code;
import evenblade.base.fact.Fact;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import java.util.List;

/**
 * Why two runs can't be compared.
 *
 * @param code what differs
 * @param values what it rests on, in the order that the code's phrase names them
 */
public record Reason(ReasonCode code, List<Value> values) {
    public Reason {
        values = List.copyOf(values);
    }

    static Reason of(ReasonCode code, Value... values) {
        return new Reason(code, List.of(values));
    }

    public Fact fact() {
        return new Fact(code, values);
    }

    /** Said where the rest is compared all the same. */
    Warning leftOut() {
        return Warning.of(code.warning(), Subject.Whole.COMPARISON, fact());
    }

    /** The kinds of unlikeness that forbid a comparison. */
    public enum ReasonCode implements Code {
        SENSOR_DIFFERS,
        PLACE_DIFFERS,
        DIRECTION_DIFFERS,
        GAIN_DIFFERS,
        FULL_SCALE_DIFFERS,
        CALIBRATION_DIFFERS,
        UNIT_DIFFERS,
        LOSSY_AGAINST_LOSSLESS,
        CODING_DIFFERS,
        SPEED_NOT_CONFIRMED,
        INSTALLATION_DIFFERS,
        NO_COMMON_CHANNEL,
        NO_DWELL_AT_SAME_RPM,
        BLADE_PASS_NOT_DETECTED;

        /** The warning of the same name, where only a part can't be compared. */
        WarningCode warning() {
            return WarningCode.valueOf(name());
        }
    }
}
