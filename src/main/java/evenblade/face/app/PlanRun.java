package evenblade.face.app;

import evenblade.machine.installation.Installation;
import evenblade.machine.installation.InstallationFile;
import evenblade.machine.plan.Planner;
import evenblade.machine.plan.RunPlan;
import evenblade.tell.report.PaperSize;
import evenblade.tell.report.RunCardSheet;
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
    public static RunPlan answer(Path installation, List<Double> engineRpms, OptionalDouble sampleRateHz) {
        return answer(InstallationFile.read(installation), engineRpms, sampleRateHz);
    }

    /** The same for an installation that is known already. */
    public static RunPlan answer(Installation installation, List<Double> engineRpms, OptionalDouble sampleRateHz) {
        return Planner.plan(installation, engineRpms, sampleRateHz);
    }

    /**
     * Writes the run card as a page to print; an earlier file of that name is replaced.
     *
     * @throws evenblade.base.problem.BadInput where it can't be written there
     */
    public static void writeCard(RunPlan plan, Path file, PaperSize paper) {
        Path whole = file.toAbsolutePath();
        new OutFolder(whole.getParent())
                .put(
                        whole.getFileName().toString(),
                        pdf -> RunCardSheet.of(plan).writePdf(paper, pdf));
    }
}
