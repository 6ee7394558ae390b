package evenblade.face.app;

import evenblade.keep.job.Event;
import evenblade.keep.practice.Fault;
import evenblade.keep.practice.OpenPractice;
import evenblade.keep.practice.PracticeInstallation;
import evenblade.keep.practice.PracticeJob;
import evenblade.keep.practice.PracticeStep;
import evenblade.keep.practice.SealedTruth;
import evenblade.keep.practice.StepPractice;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.InstallationFile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Makes an invented job with known truth, to practise on. */
public final class MakePractice {
    /** The fault where none is named. */
    public static final Fault USUAL_FAULT = Fault.BLADE_OUT_OF_TRACK;

    private MakePractice() {}

    /**
     * Writes the job.
     *
     * @param folder empty or not there yet
     * @param faults by name; the usual one where there is none
     * @param seed same seed, same job
     * @param installationFile of another aircraft than the invented one
     * @throws evenblade.base.problem.BadInput where a fault isn't known or the installation can't have it, or the
     *     folder isn't empty
     */
    public static PracticeJob.Made make(Path folder, List<String> faults, long seed, Optional<Path> installationFile)
            throws IOException {
        List<Fault> known = faults.isEmpty()
                ? List.of(USUAL_FAULT)
                : faults.stream().map(Fault::named).toList();
        Installation installation =
                installationFile.map(InstallationFile::read).orElseGet(PracticeInstallation::geared);
        return PracticeJob.of(installation, known, seed).writeBySeed(folder);
    }

    /**
     * Writes a job whose faults come from the seed, sealed.
     *
     * @param folder empty or not there yet
     * @param seed same seed, same job
     * @throws evenblade.base.problem.BadInput where the folder isn't empty
     */
    public static Path surprise(Path folder, long seed, Optional<Path> installationFile) throws IOException {
        Installation installation =
                installationFile.map(InstallationFile::read).orElseGet(PracticeInstallation::geared);
        return PracticeJob.writeSurprise(folder, PracticeJob.of(installation, List.of(), seed));
    }

    /**
     * Begins a job in which evidence comes as it is asked for.
     *
     * @param seed same seed, same machine
     * @throws evenblade.base.problem.BadInput where the folder isn't empty
     */
    public static void stepwise(Path folder, long seed, Optional<Path> installationFile) throws IOException {
        StepPractice.begin(
                folder, installationFile.map(InstallationFile::read).orElseGet(PracticeInstallation::geared), seed);
    }

    /**
     * Takes a step in such a job.
     *
     * @param step as typed
     * @return what came into the record
     */
    public static Event step(Path folder, String step) throws IOException {
        return StepPractice.open(folder).take(PracticeStep.read(step));
    }

    /** How it went; empty where the job isn't one of that kind. */
    public static Optional<StepPractice.Score> score(Path folder) throws IOException {
        return StepPractice.goesOn(folder)
                ? Optional.of(StepPractice.open(folder).score())
                : Optional.empty();
    }

    /**
     * Opens the sealed answer of a job and puts the truth about each run beside it, into the folder {@code truth}.
     *
     * @throws evenblade.base.problem.BadInput where the job has none
     */
    public static SealedTruth revealed(Path folder) throws IOException {
        SealedTruth truth = SealedTruth.read(folder);
        if (StepPractice.goesOn(folder)) {
            return truth;
        }
        Path truths = Files.createDirectories(folder.resolve("truth"));
        for (Map.Entry<String, String> run : truth.truths().entrySet()) {
            Files.writeString(truths.resolve(run.getKey()), run.getValue(), StandardCharsets.UTF_8);
        }
        return truth;
    }

    /**
     * Writes a job that goes on, to be balanced to the end, with its first run.
     *
     * @param faults by name; a mass imbalance where there is none
     * @param mark whether the propeller has a mark
     * @return the run
     */
    public static Event toBalance(Path folder, List<String> faults, long seed, boolean mark) throws IOException {
        List<Fault> known = faults.isEmpty()
                ? List.of(Fault.MASS_IMBALANCE)
                : faults.stream().map(Fault::named).toList();
        return new OpenPractice(known, seed, mark).begin(folder);
    }

    /**
     * Makes the next run of such a job, with the weights that are on by its record.
     *
     * @return the run
     */
    public static Event nextRun(Path folder, Optional<String> label) throws IOException {
        return OpenPractice.nextRun(folder, label);
    }
}
