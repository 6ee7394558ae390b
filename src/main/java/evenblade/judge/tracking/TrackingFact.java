package evenblade.judge.tracking;

import evenblade.base.fact.Code;

/** What is said of a blade track, beside warnings. */
public enum TrackingFact implements Code {
    LIMIT_NOT_APPLICABLE,
    AGAINST_LIMIT,
    WITHIN_LIMIT,
    BEYOND_LIMIT,
    KEEPS_TO,
    IS_MORE_THAN,
    ONE_ORDER_UNEVEN,
    ONE_ORDER_EVEN,
    ONE_ORDER_BEYOND,
    BEYOND_BUT_UNCLEAR,
    UNCLEAR,
    MARKS_CONTRADICT,
    MARK_SLIPPED,
    OTHERS_ALIKE,
    OTHERS_POINT_TO,
    PERHAPS,
    PERHAPS_SMALL,
    NOT_SEPARATED_YET,
    WITHIN_READING_ERROR,
    GOES_WITH_BLADE,
    STAYS_ON_HUB,
    BOTH,
    MIRRORED,
    ONLY_LEANS,
    NOTHING_MORE,
    BLADE_OFF,
    POSITION_OFF,
    NO_SINGLE_ONE,
    RUN_OUT_EXPLAINS,
    RUN_OUT_EXPLAINS_PART,
    RUN_OUT_DOES_NOT_EXPLAIN,
    RUN_OUT_TOO_SMALL
}
