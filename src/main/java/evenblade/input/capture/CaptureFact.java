package evenblade.input.capture;

import evenblade.base.fact.Code;

/** What the system said of an ending. */
public enum CaptureFact implements Code {
    NO_DETAIL,
    DETAIL
}
