package evenblade.face.app;

import evenblade.base.fact.Code;

/** What is said of takes, beside warnings. */
public enum TakeFact implements Code {
    THE_SOUND,
    THE_RECORDING,
    SAVED,
    NOTHING_SAVED
}
