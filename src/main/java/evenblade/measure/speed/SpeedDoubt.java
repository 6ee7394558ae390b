package evenblade.measure.speed;

import evenblade.base.fact.Code;

/** Why the speed of a stretch isn't confirmed. */
public enum SpeedDoubt implements Code {
    NOTHING_STANDS,
    ONLY_MAINS,
    ONE_LINE,
    TWO_LINES,
    ONE_SERIES,
    ONE_SHAFT,
    CHANCE,
    OTHER_SPEED,
    OTHER_RATIO,
    OTHER_BLADES,
    SECOND_ENGINE,
    PROPELLER_HIDDEN,
    ENGINE_HIDDEN,
    NOTHING_DETECTED,
    NEVER_STEADY
}
