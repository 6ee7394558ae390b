package evenblade.measure.speed;

import evenblade.base.problem.Warning;

/** What is said where the speed never settles. */
final class NoDwell {
    private NoDwell() {}

    static Warning warning() {
        return new Warning("no-dwell", "the speed never stays within ± 1 % for 5 s, so no amplitude is measured");
    }
}
