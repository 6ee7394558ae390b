package evenblade.face.app;

import evenblade.base.json.JsonDocument;
import evenblade.base.json.JsonObject;
import evenblade.base.json.JsonWriter;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Entry;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import evenblade.machine.installation.InstallationFile;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.Map;
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
        return write(job, JsonDocument.read(installation).plain(), text, at);
    }

    /**
     * The same as typed into a form. What the form has no field for stays as it is.
     *
     * @throws evenblade.base.problem.BadInput naming the field, where something in it can't be used
     */
    public static Event answer(Path job, DescribeInstallation.Form form, String text) {
        Map<String, Object> now = JobFolder.open(job).record().installationNow();
        String whole = JsonWriter.write(DescribeInstallation.over(now, form));
        JsonObject changed = JsonDocument.parse(whole, "installation");
        InstallationFile.of(changed);
        return write(job, changed.plain(), text, Optional.empty());
    }

    private static Event write(Path job, Map<String, Object> installation, String text, Optional<OffsetDateTime> at) {
        Detail.NewInstallation changed = new Detail.NewInstallation(installation);
        return JobFolder.open(job).append(new Entry(at, Optional.empty(), text, changed));
    }
}
