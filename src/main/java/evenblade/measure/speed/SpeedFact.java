package evenblade.measure.speed;

import evenblade.base.fact.Code;

/** What is said of speed, beside warnings. */
public enum SpeedFact implements Code {
    SPEED_FROM_LINES,
    FASTER,
    SLOWER,
    LARGER,
    SMALLER,
    NOT_CONFIRMED
}
