package evenblade.judge.comparison;

import evenblade.base.problem.Warning;

/** What is said where a job has no repeat run. */
final class NoRepeat {
    static final Warning WARNING = new Warning(
            "no-repeat-run",
            "no run of this job repeats another with nothing changed, so the usual least scatter from run to run is"
                    + " assumed (3 % on 1×, 6 % on blade pass; common practice, no source): do one run twice before"
                    + " the next change");

    private NoRepeat() {}
}
