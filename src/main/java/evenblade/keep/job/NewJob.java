package evenblade.keep.job;

import evenblade.base.json.JsonDocument;
import evenblade.base.json.JsonObject;
import evenblade.base.json.JsonWriter;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.InstallationFile;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/**
 * A job to be begun.
 *
 * @param name what to call it
 * @param invented whether it is made up for practice
 * @param installation engine, drive and propeller
 * @param installationAsWritten the same as its file has it
 */
public record NewJob(
        String name, boolean invented, Installation installation, Map<String, Object> installationAsWritten) {
    /** A job for an installation that no file was written for. */
    public static NewJob of(String name, boolean invented, Installation installation) {
        String text = JsonWriter.write(InstallationFile.written(installation));
        return new NewJob(
                name,
                invented,
                installation,
                JsonDocument.parse(text, "installation").plain());
    }

    /**
     * A real job for the installation in a file.
     *
     * @throws evenblade.base.problem.BadInput where the file isn't an installation
     */
    public static NewJob fromFile(String name, Path installationFile) {
        JsonObject json = JsonDocument.read(installationFile);
        return new NewJob(name, false, InstallationFile.of(json), json.plain());
    }

    JobRecord record() {
        return new JobRecord(name, invented, installation, installationAsWritten, List.of());
    }
}
