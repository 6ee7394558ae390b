package evenblade.input.intake;

import evenblade.base.fact.Code;

/** What is said of a file, beside warnings. */
public enum IntakeFact implements Code {
    NAME,
    NAME_WITH_UNIT,
    COLUMN_NUMBER,
    COLUMN_NAME,
    SECONDS,
    MILLISECONDS,
    MICROSECONDS,
    NANOSECONDS,
    LENGTH_OPEN,
    LENGTH_CUT,
    LENGTH_GOES_ON,
    LENGTH_INSIDE_FRAME,
    STAMPS_AGREE,
    STAMPS_FOLLOW_NO_CLOCK
}
