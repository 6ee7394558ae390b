package evenblade.judge.balance;

import evenblade.base.fact.Warning;
import evenblade.base.units.SignalUnit;
import evenblade.machine.installation.HubCounting;
import evenblade.machine.installation.Installation;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the runs of a job say about balance weights. Angles inside are counted against the rotation, as phases are.
 *
 * @param job its name
 * @param invented whether it was made up for practice
 * @param installation engine, drive, propeller, and where weights may go
 * @param counted the sense in which the user counts angles on the hub; empty until that was answered
 * @param channel the channel that was read; empty where no run could be
 * @param engineRpm the speed at which the runs were read; empty where none could be
 * @param runs since something else than a weight was changed, in order of time
 * @param request what the answer was reckoned from
 * @param answer the correction in place of all weights, or why there is none
 * @param on weights that are on the hub now
 * @param addNow what to add to them; empty without a correction
 * @param addSplit the same over the places, where there are places that reach
 * @param checks runs with a weight that no earlier run had, held against what the earlier runs predicted
 * @param warnings runs that had to be left out
 */
public record JobBalance(
        String job,
        boolean invented,
        Installation installation,
        Optional<HubCounting> counted,
        Optional<Read> channel,
        OptionalDouble engineRpm,
        List<Run> runs,
        BalanceRequest request,
        BalanceAnswer answer,
        List<Weight> on,
        Optional<Unbalance> addNow,
        Optional<Split> addSplit,
        List<CheckRun> checks,
        List<Warning> warnings) {
    public JobBalance {
        runs = List.copyOf(runs);
        on = List.copyOf(on);
        checks = List.copyOf(checks);
        warnings = List.copyOf(warnings);
    }

    /** The channel whose 1× was read, and its unit. */
    public record Read(String channel, SignalUnit unit) {}

    /**
     * One run.
     *
     * @param id of its entry
     * @param name as the user calls it
     * @param reading its 1× line with the weights that were on; empty where it has no dwell to read
     * @param conditions what else has to be known of it
     */
    public record Run(String id, String name, Optional<WeightedReading> reading, TrialConditions conditions) {}

    /**
     * A run held against its prediction.
     *
     * @param run the run
     * @param predicted from the runs before it
     * @param check how it comes out
     */
    public record CheckRun(Run run, Residual predicted, Residual.Check check) {}

    /** Whether what is on agrees with the correction: what is missing is less than twice its standard error. */
    public boolean leaveAsItIs() {
        return addNow.isPresent()
                && !on.isEmpty()
                && addNow.get().gmm()
                        < 2 * answer.advice().orElseThrow().correction().standardErrorGmm();
    }

    /** An angle against the rotation, as the user counts angles; 0 up to but not including 360. */
    public double asCounted(double degrees) {
        double turned = counted.filter(c -> c == HubCounting.WITH_ROTATION).isPresent() ? -degrees : degrees;
        return ((turned % 360) + 360) % 360;
    }
}
