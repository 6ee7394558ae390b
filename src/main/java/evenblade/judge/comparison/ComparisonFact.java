package evenblade.judge.comparison;

import evenblade.base.fact.Code;

/** What is said of runs that are held against each other, beside reasons and warnings. */
public enum ComparisonFact implements Code {
    SENSOR,
    PLACE,
    DIRECTION,
    WIND,
    TEMPERATURE,
    FUEL,
    RECORDER,
    MICROPHONE,
    SCALE_UNKNOWN,
    FULL_SCALE_ENTERED,
    FULL_SCALE_OF_FILE,
    NOT_IN_FIRST,
    NOT_IN_SECOND,
    SHARES_PLACE,
    SPEED_DOUBTED,
    NO_DWELL,
    HAS_SPEEDS,
    HAS_CHANNELS,
    NO_SUCH_CHANNEL,
    NO_SAME_SPEED,
    NO_SAME_CHANNEL,
    HIGHER,
    LOWER
}
