package evenblade.keep.job;

import evenblade.base.json.JsonFields;
import evenblade.base.json.JsonObject;
import evenblade.input.recording.TableReading;
import evenblade.keep.job.Conditions.Condition;
import evenblade.keep.job.Detail.StoredFile;
import evenblade.keep.job.Detail.Told;
import evenblade.machine.installation.InstallationFile;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** What belongs to one kind of entry, as JSON. */
final class DetailFormat {

    private DetailFormat() {}

    /** The keys that belong to a kind. */
    static List<String> keys(Kind kind) {
        return switch (kind) {
            case RUN -> List.of("file", "settings", "conditions", "arrivals", "told");
            case AMENDMENT -> List.of("event", "settings", "conditions", "told");
            case INSTALLATION -> List.of("installation");
            case TRACKING -> List.of("layout", "readings", "sigma");
            case PITCH -> List.of("layout", "readings", "zero", "reference", "station", "sigma");
            case RUN_OUT -> List.of("total", "dialRadius", "high");
            case ATTACHMENT -> List.of("file", "type");
            case STRUCK_OUT -> List.of("event");
            case BALANCE -> List.of("mass", "radius", "angle", "off", "anglesCounted");
            case CORRECTION, NOTE -> List.of();
        };
    }

    static void write(Detail detail, JsonFields json) {
        if (detail instanceof Detail.Run run) {
            json.put("file", file(run.file()))
                    .put("settings", settings(run.settings()))
                    .put("conditions", conditions(run.conditions()))
                    .put("arrivals", run.arrivals().map(DetailFormat::file))
                    .put("told", told(run.told()));
        } else if (detail instanceof Detail.Amendment amendment) {
            json.put("event", amendment.event())
                    .put("settings", settings(amendment.settings()))
                    .put("conditions", conditions(amendment.conditions()))
                    .put("told", told(amendment.told()));
        } else if (detail instanceof Detail.NewInstallation installation) {
            json.put("installation", installation.asWritten());
        } else if (detail instanceof Detail.Tracking tracking) {
            StaticFormat.write(tracking, json);
        } else if (detail instanceof Detail.Pitch pitch) {
            StaticFormat.write(pitch, json);
        } else if (detail instanceof Detail.RunOut runOut) {
            StaticFormat.write(runOut, json);
        } else if (detail instanceof Detail.Balance balance) {
            StaticFormat.write(balance, json);
        } else if (detail instanceof Detail.Attachment attachment) {
            json.put("file", file(attachment.file()))
                    .put("type", attachment.type().mediaType());
        } else if (detail instanceof Detail.StruckOut strike) {
            json.put("event", strike.event());
        }
    }

    static Detail read(Kind kind, JsonObject json) {
        return switch (kind) {
            case RUN ->
                new Detail.Run(
                        file(json.object("file")),
                        settings(json.object("settings")),
                        conditions(json.object("conditions")),
                        json.optionalObject("arrivals").map(DetailFormat::file),
                        told(json));
            case AMENDMENT ->
                new Detail.Amendment(
                        json.text("event"),
                        settings(json.object("settings")),
                        conditions(json.object("conditions")),
                        told(json));
            case INSTALLATION -> {
                InstallationFile.of(json.object("installation"));
                yield new Detail.NewInstallation(json.object("installation").plain());
            }
            case CORRECTION -> new Detail.Correction();
            case NOTE -> new Detail.Note();
            case BALANCE -> StaticFormat.balance(json);
            case TRACKING -> StaticFormat.tracking(json);
            case PITCH -> StaticFormat.pitch(json);
            case RUN_OUT -> StaticFormat.runOut(json);
            case ATTACHMENT -> new Detail.Attachment(file(json.object("file")), nature(json));
            case STRUCK_OUT -> new Detail.StruckOut(json.text("event"));
        };
    }

    /** What was said of a run beside its file. */
    static void writeSaid(RunSettings settings, Conditions conditions, JsonFields json) {
        json.put("settings", settings(settings)).put("conditions", conditions(conditions));
    }

    static RunSettings settingsOf(JsonObject json) {
        return settings(json.object("settings"));
    }

    static Conditions conditionsOf(JsonObject json) {
        return conditions(json.object("conditions"));
    }

    private static List<JsonFields> told(List<Told> told) {
        return told.stream()
                .map(each -> new JsonFields().put("code", each.code()).put("message", each.text()))
                .toList();
    }

    private static List<Told> told(JsonObject json) {
        if (!json.has("told")) {
            return List.of();
        }
        List<Told> told = new ArrayList<>();
        for (JsonObject each : json.objects("told")) {
            each.requireOnly("code", "message");
            told.add(new Told(each.text("code"), each.text("message")));
        }
        return told;
    }

    private static JsonFields file(StoredFile file) {
        return new JsonFields()
                .put("path", file.path())
                .put("originalName", file.originalName())
                .put("sha256", file.stamp().sha256())
                .put("bytes", file.stamp().bytes())
                .put("modified", file.stamp().modified().toString());
    }

    private static StoredFile file(JsonObject json) {
        json.requireOnly("path", "originalName", "sha256", "bytes", "modified");
        String path = json.text("path");
        if (!path.matches("(" + StoredFiles.RECORDINGS + "|" + StoredFiles.ATTACHMENTS + ")/[^/\\\\]+")) {
            throw json.refuse(
                    "path", "a file in '" + StoredFiles.RECORDINGS + "' or '" + StoredFiles.ATTACHMENTS + "'");
        }
        if (!json.text("sha256").matches("[0-9a-f]{64}")) {
            throw json.refuse("sha256", "64 hexadecimal digits in small letters");
        }
        try {
            FileStamp stamp = new FileStamp(
                    json.text("sha256"),
                    (long) json.number("bytes", 0, Long.MAX_VALUE),
                    Instant.parse(json.text("modified")));
            EntryTime.requireLikely(stamp.modified().atOffset(ZoneOffset.UTC), json.place("modified"));
            return new StoredFile(path, json.text("originalName"), stamp);
        } catch (DateTimeParseException e) {
            throw json.refuse("modified", "a time in UTC, like \"2026-05-04T08:30:00Z\"");
        }
    }

    private static JsonFields settings(RunSettings settings) {
        return new JsonFields()
                .put("engineRpm", settings.engineRpm())
                .put("propellerRpm", settings.propellerRpm())
                .put("tolerancePercent", settings.tolerancePercent())
                .put("channels", settings.channels())
                .put("markChannel", settings.markChannel())
                .put("fullScale", settings.fullScale())
                .put("table", TableFormat.written(settings.table()));
    }

    private static RunSettings settings(JsonObject json) {
        json.requireOnly(
                "engineRpm", "propellerRpm", "tolerancePercent", "channels", "markChannel", "fullScale", "table");
        if (json.has("engineRpm") && json.has("propellerRpm")) {
            throw json.refuse("propellerRpm", "an engine speed or a propeller speed, not both");
        }
        return new RunSettings(
                json.optionalNumber("engineRpm"),
                json.optionalNumber("propellerRpm"),
                json.optionalNumber("tolerancePercent"),
                json.texts("channels"),
                json.optionalText("markChannel"),
                json.optionalText("fullScale"),
                json.optionalObject("table").map(TableFormat::read).orElse(TableReading.UNSAID));
    }

    private static JsonFields conditions(Conditions conditions) {
        JsonFields json = new JsonFields();
        conditions.entries().forEach((condition, value) -> json.put(condition.word(), value));
        return json;
    }

    private static Conditions conditions(JsonObject json) {
        json.requireOnly(Arrays.stream(Condition.values()).map(Condition::word).toList());
        Map<Condition, String> entries = new EnumMap<>(Condition.class);
        for (Condition condition : Condition.values()) {
            json.optionalText(condition.word()).ifPresent(value -> entries.put(condition, value));
        }
        return new Conditions(entries);
    }

    private static FileNature nature(JsonObject json) {
        String type = json.word(
                "type",
                Arrays.stream(FileNature.values()).map(FileNature::mediaType).toList());
        return FileNature.ofMediaType(type).orElseThrow();
    }
}
