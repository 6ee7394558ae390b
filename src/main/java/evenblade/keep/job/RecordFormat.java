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
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The text of {@code job.json}. Unknown keys are refused: written back by this program they would be
 * lost.
 */
final class RecordFormat {
    /** The version this program writes. */
    static final int VERSION = 2;

    private static final String FORMAT = "evenblade-job";

    private final Map<Integer, Migration> migrations;

    /** A format that also reads older versions, each by the step that leads to the next. */
    RecordFormat(Map<Integer, Migration> migrations) {
        this.migrations = Map.copyOf(migrations);
    }

    /** The format as it is today; what version 2 added, no record of version 1 has. */
    static RecordFormat current() {
        return new RecordFormat(Map.of(1, older -> older));
    }

    /**
     * What was read.
     *
     * @param version that the text was written in
     * @param record what it says
     */
    record Reading(int version, JobRecord record) {}

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
        return new Reading(version, record(brought(json, version, file)));
    }

    byte[] write(JobRecord record) {
        JsonFields json = new JsonFields()
                .put("format", FORMAT)
                .put("version", VERSION)
                .put("name", record.name())
                .put("invented", record.invented())
                .put("installation", record.installationAsWritten())
                .put(
                        "events",
                        record.events().stream().map(EventFormat::written).toList());
        String text = JsonWriter.write(json);
        RecordBounds.check(JsonDocument.parse(text, "the new entry").plain(), BadInput.in("the new entry"));
        return text.getBytes(StandardCharsets.UTF_8);
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
        json.requireOnly("format", "version", "name", "invented", "installation", "events");
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
        return new JobRecord(json.text("name"), json.flag("invented"), typed, installation.plain(), events);
    }
}
