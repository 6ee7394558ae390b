package evenblade.keep.job;

import evenblade.base.json.JsonDocument;
import evenblade.base.json.JsonFields;
import evenblade.base.json.JsonObject;
import evenblade.base.json.JsonWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/**
 * What was said about a take, beside it until it is in the job: a take that is rescued after a crash comes with it.
 *
 * @param label a short name
 * @param text a remark; may be empty
 * @param settings how it is to be analysed
 * @param conditions what it was like
 */
public record TakeNote(Optional<String> label, String text, RunSettings settings, Conditions conditions) {
    /** Behind the name of the take's own file. */
    public static final String ENDING = ".note.json";

    /** Nothing said. */
    public static final TakeNote NONE = new TakeNote(Optional.empty(), "", RunSettings.NONE, Conditions.NONE);

    /** What is said of a run that is about to be recorded. */
    public static TakeNote of(NewRun run) {
        return new TakeNote(run.label(), run.text(), run.settings(), run.conditions());
    }

    /** Where the note of a take lies. */
    public static Path of(Path take) {
        return take.resolveSibling(take.getFileName() + ENDING);
    }

    /** Writes the note beside its take. */
    public void write(Path take) throws IOException {
        JsonFields json = new JsonFields().put("label", label).put("text", text);
        DetailFormat.writeSaid(settings, conditions, json);
        Files.write(of(take), JsonWriter.write(json).getBytes(StandardCharsets.UTF_8));
    }

    /**
     * The note of a take; nothing said, where there is none.
     *
     * @throws evenblade.base.problem.BadInput where it is damaged
     */
    public static TakeNote read(Path take) {
        Path file = of(take);
        if (!Files.exists(file)) {
            return NONE;
        }
        JsonObject json = JsonDocument.read(file);
        json.requireOnly("label", "text", "settings", "conditions");
        return new TakeNote(
                json.optionalText("label"),
                json.text("text"),
                DetailFormat.settingsOf(json),
                DetailFormat.conditionsOf(json));
    }
}
