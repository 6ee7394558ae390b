package evenblade.face.app;

import evenblade.base.json.JsonDocument;
import evenblade.base.json.JsonFields;
import evenblade.base.json.JsonWriter;
import evenblade.base.problem.BadInput;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.NewJob;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.InstallationFile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
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
    public static JobFolder start(Path folder, Path installation, Optional<String> name) {
        return JobFolder.create(folder, NewJob.fromFile(called(folder, name), installation));
    }

    /** Makes a job for an installation that no file was written for. */
    public static JobFolder start(Path folder, Installation installation, Optional<String> name) {
        return JobFolder.create(folder, NewJob.of(called(folder, name), false, installation));
    }

    /**
     * A job whose installation is asked for.
     *
     * @param folder of the job
     * @param file where the installation will be written: beside the folder
     */
    public record Asked(Path folder, Path file) {
        /**
         * Begins the job and writes the installation file.
         *
         * @param installation as its file holds it
         * @throws BadInput where the answers don't make an installation or the folder can't be used
         */
        public JobFolder start(JsonFields installation, Optional<String> name) throws IOException {
            String text = JsonWriter.write(installation);
            Installation known = InstallationFile.of(JsonDocument.parse(text, "answers"));
            JobFolder job = StartJob.start(folder, known, name);
            Files.writeString(file, text, StandardCharsets.UTF_8, StandardOpenOption.CREATE_NEW);
            return job;
        }
    }

    /**
     * Prepares a job whose installation is asked for.
     *
     * @throws BadInput where the installation's file is there already
     */
    public static Asked asked(Path folder) {
        Path whole = folder.toAbsolutePath().normalize();
        Path file = whole.resolveSibling(whole.getFileName() + "-installation.json");
        if (Files.exists(file)) {
            throw BadInput.in(file)
                    .found("a file that is there already", "none, or its name given as the installation");
        }
        return new Asked(folder, file);
    }

    private static String called(Path folder, Optional<String> name) {
        return name.orElseGet(
                () -> folder.toAbsolutePath().normalize().getFileName().toString());
    }
}
