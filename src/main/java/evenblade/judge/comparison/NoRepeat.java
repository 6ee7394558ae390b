package evenblade.judge.comparison;

import evenblade.base.fact.Subject;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;

/** What is said where a job has no repeat run. */
final class NoRepeat {
    static final Warning WARNING = Warning.of(WarningCode.NO_REPEAT_RUN, Subject.Whole.COMPARISON);

    private NoRepeat() {}
}
