package evenblade.face.app;

import evenblade.base.json.JsonDocument;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Entry;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import evenblade.machine.installation.InstallationFile;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.Optional;

/** Puts the installation of a job right, by a later entry. */
public final class ChangeInstallation {
    private ChangeInstallation() {}

    /**
     * Writes the entry.
     *
     * @param installation file of what runs
     * @param text a remark; may be empty
     * @param at when; now, where empty
     * @throws evenblade.base.problem.BadInput where job or file can't be used
     */
    public static Event answer(Path job, Path installation, String text, Optional<OffsetDateTime> at) {
        InstallationFile.read(installation);
        Detail.NewInstallation changed =
                new Detail.NewInstallation(JsonDocument.read(installation).plain());
        return JobFolder.open(job).append(new Entry(at, Optional.empty(), text, changed));
    }
}
