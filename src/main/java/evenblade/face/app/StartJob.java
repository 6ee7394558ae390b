package evenblade.face.app;

import evenblade.keep.job.JobFolder;
import evenblade.keep.job.NewJob;
import evenblade.machine.installation.Installation;
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
     * @throws evenblade.base.problem.BadInput where the folder or the file can't be used
     */
    public static JobFolder answer(Path folder, Path installation, Optional<String> name) {
        return JobFolder.create(folder, NewJob.fromFile(called(folder, name), installation));
    }

    /** The same for an installation that no file was written for. */
    public static JobFolder answer(Path folder, Installation installation, Optional<String> name) {
        return JobFolder.create(folder, NewJob.of(called(folder, name), false, installation));
    }

    private static String called(Path folder, Optional<String> name) {
        return name.orElseGet(
                () -> folder.toAbsolutePath().normalize().getFileName().toString());
    }
}
