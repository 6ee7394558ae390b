package evenblade.judge.comparison;

import evenblade.base.fact.Code;
import evenblade.base.fact.WarningCode;

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
