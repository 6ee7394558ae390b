package evenblade.measure.soundcheck;

import evenblade.base.fact.Code;

/** What is said of a channel, beside warnings. */
public enum SoundFact implements Code {
    NO_PULSES
}
