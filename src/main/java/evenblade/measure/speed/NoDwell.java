package evenblade.measure.speed;

import evenblade.base.fact.Subject;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;

/** What is said where the speed never settles. */
final class NoDwell {
    private NoDwell() {}

    static Warning warning() {
        return Warning.of(WarningCode.NO_DWELL, Subject.Whole.RECORDING);
    }
}
