package evenblade.judge.comparison;

import evenblade.base.fact.Worded;

/** What a change comes to. */
public enum ChangeVerdict implements Worded {
    LOWER,
    HIGHER,
    NO_CHANGE_SHOWN
}
