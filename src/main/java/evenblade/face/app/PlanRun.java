package evenblade.face.app;

import evenblade.machine.installation.Installation;
import evenblade.machine.installation.InstallationFile;
import evenblade.machine.plan.Planner;
import evenblade.machine.plan.RunPlan;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;

/** Answers what a ground run will show, before it is made. */
public final class PlanRun {
    private PlanRun() {}

    /**
     * Plans a run of the installation in a file.
     *
     * @param engineRpms speeds to hold; none for the usual ones between idle and the highest speed
     * @param sampleRateHz samples per second of the sensor, where known
     * @throws evenblade.base.problem.BadInput where the file or a number can't be used
     */
    public static RunPlan plan(Path installation, List<Double> engineRpms, OptionalDouble sampleRateHz) {
        return plan(InstallationFile.read(installation), engineRpms, sampleRateHz);
    }

    /** Plans a run of an installation that is known already. */
    public static RunPlan plan(Installation installation, List<Double> engineRpms, OptionalDouble sampleRateHz) {
        return Planner.plan(installation, engineRpms, sampleRateHz);
    }
}
