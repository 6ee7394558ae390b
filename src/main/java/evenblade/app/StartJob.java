package evenblade.app;

import evenblade.job.JobFolder;
import evenblade.job.NewJob;
import java.nio.file.Path;
import java.util.Optional;

/** Begins a job record. */
public final class StartJob {
    private StartJob() {}

    /**
     * Makes a job in a folder that is empty or not there yet.
     *
     * @param installation the installation file; it is copied into the record
     * @param name what to call the job; the folder's name, where empty
     * @throws evenblade.problem.BadInput where the folder or the file can't be used
     */
    public static JobFolder answer(Path folder, Path installation, Optional<String> name) {
        String called = name.orElseGet(
                () -> folder.toAbsolutePath().normalize().getFileName().toString());
        return JobFolder.create(folder, NewJob.fromFile(called, installation));
    }
}
