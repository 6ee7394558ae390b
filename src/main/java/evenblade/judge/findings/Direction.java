package evenblade.judge.findings;

import evenblade.base.fact.Code;

/** Which way a channel feels, against the propeller shaft. */
public enum Direction implements Code {
    ALONG,
    /** Across the shaft, level. */
    ACROSS,
    /** Across the shaft, upright. */
    UP,
    UNKNOWN;

    /** Whether it lies across the shaft, level or upright. */
    public boolean acrossShaft() {
        return this == ACROSS || this == UP;
    }
}
