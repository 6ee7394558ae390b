package evenblade.keep.job;

import evenblade.base.json.JsonFields;
import evenblade.base.json.JsonObject;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** An entry as JSON: what every kind has, then what belongs to its kind. */
public final class EventFormat {
    private static final List<String> COMMON = List.of("id", "kind", "at", "entered", "label", "text");

    private EventFormat() {}

    /** The entry as it stands in {@code job.json}; more may be put after it. */
    public static JsonFields written(Event event) {
        JsonFields json = new JsonFields()
                .put("id", event.id())
                .put("kind", event.kind().word())
                .put("at", text(event.at()))
                .put("entered", text(event.entered()))
                .put("label", event.label())
                .put("text", event.text());
        DetailFormat.write(event.detail(), json);
        return json;
    }

    /** A time as the record writes it. */
    public static String text(OffsetDateTime time) {
        return DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(time);
    }

    static Event read(JsonObject json) {
        String word =
                json.word("kind", Arrays.stream(Kind.values()).map(Kind::word).toList());
        Kind kind = Kind.of(word).orElseThrow();
        List<String> known = new ArrayList<>(COMMON);
        known.addAll(DetailFormat.keys(kind));
        json.requireOnly(known);
        String id = json.text("id");
        if (!JobRecord.looksLikeId(id)) {
            throw json.refuse("id", "an id like \"e12\"");
        }
        return new Event(
                id,
                time(json, "at"),
                time(json, "entered"),
                json.optionalText("label"),
                json.text("text"),
                DetailFormat.read(kind, json));
    }

    private static OffsetDateTime time(JsonObject json, String key) {
        try {
            OffsetDateTime at = OffsetDateTime.parse(json.text(key));
            EntryTime.requireLikely(at, json.place(key));
            return at;
        } catch (DateTimeParseException e) {
            throw json.refuse(key, "a time with its offset, like \"2026-05-04T10:30:00+02:00\"");
        }
    }
}
