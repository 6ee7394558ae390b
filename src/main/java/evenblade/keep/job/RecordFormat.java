package evenblade.keep.job;

import evenblade.base.json.JsonDocument;
import evenblade.base.json.JsonFields;
import evenblade.base.json.JsonObject;
import evenblade.base.json.JsonWriter;
import evenblade.base.problem.BadInput;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.InstallationFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The text of {@code job.json}. Unknown keys are refused: written back by this program they would be
 * lost.
 */
final class RecordFormat {
    /** The version this program writes. */
    static final int VERSION = 3;

    /** The first version whose records carry a seal. */
    private static final int FIRST_SEALED = 3;

    private static final String FORMAT = "evenblade-job";

    private final Map<Integer, Migration> migrations;

    /** A format that also reads older versions, each by the step that leads to the next. */
    RecordFormat(Map<Integer, Migration> migrations) {
        this.migrations = Map.copyOf(migrations);
    }

    /** The format as it is today; what versions 2 and 3 added, no record before them has. */
    static RecordFormat current() {
        return new RecordFormat(Map.of(1, older -> older, 2, older -> older));
    }

    /**
     * What was read.
     *
     * @param version that the text was written in
     * @param record what it says
     * @param changedByHand whether it isn't what this program wrote
     */
    record Reading(int version, JobRecord record, boolean changedByHand) {}

    /**
     * Reads a record.
     *
     * @throws BadInput with the line, where it is damaged, or where its version can't be read
     */
    Reading read(Path file) {
        JsonObject json = JsonDocument.read(file);
        json.word("format", List.of(FORMAT));
        int version = json.whole("version", 0, Integer.MAX_VALUE);
        if (version > VERSION) {
            throw json.place("version")
                    .found(
                            "a record of version " + version + ", written by a newer Evenblade",
                            "version " + VERSION + " or older; use the newer program, nothing was changed");
        }
        RecordBounds.check(json.plain(), BadInput.in(file));
        JobRecord record = record(brought(json, version, file));
        boolean sealed = version < FIRST_SEALED
                || json.optionalText("seal").filter(seal(record)::equals).isPresent();
        boolean noted = json.has("changedByHand") && json.flag("changedByHand");
        return new Reading(version, record, noted || !sealed);
    }

    /** A record with its seal. */
    byte[] write(JobRecord record, boolean changedByHand) {
        JsonFields json = new JsonFields().put("format", FORMAT).put("version", VERSION);
        content(record, json).put("seal", seal(record));
        if (changedByHand) {
            json.put("changedByHand", true);
        }
        String text = JsonWriter.write(json);
        RecordBounds.check(JsonDocument.parse(text, "the new entry").plain(), BadInput.in("the new entry"));
        return text.getBytes(StandardCharsets.UTF_8);
    }

    /** SHA-256 over all that the record says, however it is laid out in the file. */
    private static String seal(JobRecord record) {
        String text = JsonWriter.write(content(record, new JsonFields()));
        // Read once more: what a program hands over and what a file gives may hold the same number in two types.
        String settled = JsonWriter.write(JsonDocument.parse(text, "record").plain());
        return HexFormat.of().formatHex(RealDisk.sha256().digest(settled.getBytes(StandardCharsets.UTF_8)));
    }

    private static JsonFields content(JobRecord record, JsonFields json) {
        return json.put("name", record.name())
                .put("invented", record.invented())
                .put("installation", record.installationAsWritten())
                .put(
                        "events",
                        record.events().stream().map(EventFormat::written).toList());
    }

    private JsonObject brought(JsonObject json, int version, Path file) {
        if (version == VERSION) {
            return json;
        }
        Map<String, Object> document = json.plain();
        for (int v = version; v < VERSION; v++) {
            Migration step = migrations.get(v);
            if (step == null) {
                throw json.refuse("version", "1 to " + VERSION + ", the versions there are");
            }
            document = step.toNext(document);
        }
        return JsonDocument.parse(JsonWriter.write(document), file + " (brought to version " + VERSION + ")");
    }

    private static JobRecord record(JsonObject json) {
        json.requireOnly("format", "version", "name", "invented", "installation", "events", "seal", "changedByHand");
        JsonObject installation = json.object("installation");
        Installation typed = InstallationFile.of(installation);
        List<Event> events = new ArrayList<>();
        Set<String> ids = new HashSet<>();
        if (!json.has("events")) {
            throw json.refuse("events", "a list of entries");
        }
        for (JsonObject each : json.objects("events")) {
            Event event = EventFormat.read(each);
            EntryRules.blades(event.detail())
                    .filter(blades -> blades != typed.propeller().blades())
                    .ifPresent(blades -> {
                        throw each.refuse(
                                "layout", "the " + typed.propeller().blades() + " blades of the installation");
                    });
            if (!ids.add(event.id())) {
                throw each.refuse("id", "an id that no other entry has");
            }
            events.add(event);
        }
        JobRecord asBegun =
                new JobRecord(json.text("name"), json.flag("invented"), typed, installation.plain(), events);
        return new JobRecord(
                asBegun.name(),
                asBegun.invented(),
                installation(asBegun.installationNow()),
                asBegun.installationAsWritten(),
                events);
    }

    /** An installation as a record keeps it. */
    static Installation installation(Map<String, Object> asWritten) {
        return InstallationFile.of(JsonDocument.parse(JsonWriter.write(asWritten), "installation"));
    }
}
