package evenblade.face.app;

import evenblade.base.json.JsonDocument;
import evenblade.base.json.JsonObject;
import evenblade.base.json.JsonWriter;
import evenblade.base.problem.BadInput;
import evenblade.base.units.FullScale;
import evenblade.keep.job.Conditions;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Detail.StoredFile;
import evenblade.keep.job.Entry;
import evenblade.keep.job.Event;
import evenblade.keep.job.HubWeight;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.JobRecord;
import evenblade.keep.job.Kind;
import evenblade.keep.job.RunSettings;
import evenblade.machine.installation.HubCounting;
import evenblade.machine.installation.InstallationFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Writes entries into a job: what was read or changed, photos and papers, and what puts earlier entries right. */
public final class WriteEntry {
    /** What stands beside {@link Conditions.Condition#NOTHING_CHANGED}. */
    public static final String SINCE_THE_RUN_BEFORE = "since the run before";

    /** The text of an entry that this program drew. */
    private static final String DRAWN = "Drawn by Evenblade.";

    private WriteEntry() {}

    /**
     * Refuses what isn't a job, before any work is done.
     *
     * @throws evenblade.base.problem.BadInput where there is none
     */
    public static void requireJob(Path job) {
        JobFolder.open(job);
    }

    /**
     * Writes an entry that needs no file: a correction, a note, static readings.
     *
     * @return as it stands in the record now
     * @throws evenblade.base.problem.BadInput where the job or the entry can't be used
     */
    public static Event append(Path job, Entry entry) {
        return JobFolder.open(job).append(entry);
    }

    /**
     * Strikes out an entry; struck out again, the strike is taken back.
     *
     * @param id of the entry
     * @param why in the user's words; may be empty
     * @throws evenblade.base.problem.BadInput where there is no such entry, or it doesn't count any more
     */
    public static Event strike(Path job, String id, String why) {
        return JobFolder.open(job).strike(id, why);
    }

    /**
     * Copies photos and papers in, all or none; photos are brought down for the report at once.
     *
     * @param text a remark to all of them; may be empty
     * @param at when they were made; now, where empty
     * @return one entry for each
     * @throws evenblade.base.problem.BadInput where one can't be read or isn't what its name says
     */
    public static List<Event> attach(Path job, List<Path> files, String text, Optional<OffsetDateTime> at) {
        JobFolder folder = JobFolder.open(job);
        List<Event> added = folder.attach(files, text, at);
        ReportPhotos photos = new ReportPhotos(folder, List.of());
        added.parallelStream().forEach(photos::keep);
        return added;
    }

    /**
     * Takes pictures in that this program drew. Each stands in the record once: one that is there already is left, an older
     * drawing of its name is crossed out.
     *
     * @return what is new
     */
    public static List<Event> drawn(Path job, List<Path> pictures) {
        JobFolder folder = JobFolder.open(job);
        List<Path> fresh = new ArrayList<>();
        for (Path picture : pictures) {
            Optional<Event> earlier = folder.record().standing(Kind.ATTACHMENT).stream()
                    .filter(event -> event.text().equals(DRAWN))
                    .filter(event -> stored(event)
                            .originalName()
                            .equals(picture.getFileName().toString()))
                    .findFirst();
            if (earlier.filter(event -> alike(picture, folder.locate(stored(event))))
                    .isEmpty()) {
                earlier.ifPresent(event -> folder.strike(event.id(), "drawn anew"));
                fresh.add(picture);
            }
        }
        return fresh.isEmpty() ? List.of() : attach(job, fresh, DRAWN, Optional.empty());
    }

    private static StoredFile stored(Event event) {
        return ((Detail.Attachment) event.detail()).file();
    }

    private static boolean alike(Path picture, Path kept) {
        try {
            return Files.exists(kept) && Files.mismatch(picture, kept) < 0;
        } catch (IOException e) {
            return false;
        }
    }

    /**
     * Puts the installation of a job right, by a later entry.
     *
     * @param installation file of what runs
     * @param text a remark; may be empty
     * @param at when; now, where empty
     * @throws evenblade.base.problem.BadInput where job or file can't be used
     */
    public static Event installation(Path job, Path installation, String text, Optional<OffsetDateTime> at) {
        InstallationFile.read(installation);
        return installation(job, JsonDocument.read(installation).plain(), text, at);
    }

    /**
     * Puts the installation right as typed into a form. What the form has no field for stays as it is.
     *
     * @throws evenblade.base.problem.BadInput naming the field, where something in it can't be used
     */
    public static Event installation(Path job, DescribeInstallation.Form form, String text) {
        Map<String, Object> now = JobFolder.open(job).record().installationNow();
        String whole = JsonWriter.write(DescribeInstallation.over(now, form));
        JsonObject changed = JsonDocument.parse(whole, "installation");
        InstallationFile.of(changed);
        return installation(job, changed.plain(), text, Optional.empty());
    }

    private static Event installation(
            Path job, Map<String, Object> installation, String text, Optional<OffsetDateTime> at) {
        return JobFolder.open(job)
                .append(new Entry(at, Optional.empty(), text, new Detail.NewInstallation(installation)));
    }

    /**
     * Puts right what a run says of itself, by a later entry.
     *
     * @param run id or label
     * @param settings what is put right of how it is analysed; the rest is unsaid
     * @param conditions what is put right of what it was like; the rest is unsaid
     * @param text a remark; may be empty
     * @param at when; now, where empty
     * @throws BadInput where there is no such run, or what is said can't be used
     */
    public static Event amend(
            Path job,
            String run,
            RunSettings settings,
            Conditions conditions,
            String text,
            Optional<OffsetDateTime> at) {
        JobFolder folder = JobFolder.open(job);
        JobRecord record = folder.record();
        settings.fullScale().ifPresent(scale -> FullScale.parse(scale, BadInput.in("full scale")));
        settings.engineRpm()
                .ifPresent(rpm -> record.installation().engine().requireRunsAt(rpm, BadInput.in("engine speed")));
        Detail.Amendment amendment = new Detail.Amendment(record.run(run).id(), settings, conditions, List.of());
        return folder.append(new Entry(at, Optional.empty(), text, amendment));
    }

    /**
     * Writes down that nothing was changed between a run and the one before it, though they differ too much to repeat each other.
     *
     * @param run id of the later one
     * @throws BadInput where there is no such run
     */
    public static Event nothingChanged(Path job, String run) {
        Conditions answer = Conditions.NONE.with(Conditions.Condition.NOTHING_CHANGED, SINCE_THE_RUN_BEFORE);
        return amend(job, run, RunSettings.NONE, answer, "", Optional.empty());
    }

    /**
     * Writes down a weight that was put on or taken off, and how angles on the hub are counted.
     *
     * @param on what was put on
     * @param off label or id of what was taken off
     * @param counted the sense in which angles on this hub are counted
     * @throws evenblade.base.problem.BadInput where the job can't be used, or no such weight is on
     */
    public static Event weight(
            Path job,
            Optional<HubWeight> on,
            Optional<String> off,
            Optional<HubCounting> counted,
            Optional<String> label,
            Optional<OffsetDateTime> at) {
        return JobFolder.open(job)
                .append(new Entry(at, label, text(on, off, counted), new Detail.Balance(on, off, counted)));
    }

    private static String text(Optional<HubWeight> on, Optional<String> off, Optional<HubCounting> counted) {
        StringBuilder text = new StringBuilder();
        off.ifPresent(name -> text.append("Weight taken off: ").append(name).append(". "));
        on.ifPresent(
                weight -> text.append("Weight put on: ").append(weight.text()).append(". "));
        counted.ifPresent(sense -> text.append("Angles on the hub are counted ")
                .append(sense == HubCounting.WITH_ROTATION ? "with" : "against")
                .append(" the rotation. "));
        return text.toString().strip();
    }
}
