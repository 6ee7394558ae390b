package evenblade.keep.job;

import evenblade.base.json.JsonDocument;
import evenblade.base.json.JsonFields;
import evenblade.base.json.JsonObject;
import evenblade.base.json.JsonWriter;
import evenblade.base.problem.BadInput;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.EnumMap;
import java.util.Map;

/** The file of a job folder that holds its particulars: {@code particulars.json}, one text for each. */
public final class ParticularsFile {
    static final String FILE_NAME = "particulars.json";
    /** As long as an entry waits for another program. */
    private static final Duration PATIENCE = Duration.ofSeconds(15);

    private ParticularsFile() {}

    /**
     * What the file of a job says; nothing where there is none.
     *
     * @throws BadInput where the file can't be read
     */
    public static Particulars read(Path job) {
        InsideFolder.requireOwnParts(job);
        Path file = job.resolve(FILE_NAME);
        if (!Files.exists(file)) {
            return Particulars.NONE;
        }
        JsonObject json = JsonDocument.read(file).requireOnly(Particulars.Item.words());
        RecordBounds.check(json.plain(), BadInput.in(file));
        Map<Particulars.Item, String> items = new EnumMap<>(Particulars.Item.class);
        for (Particulars.Item item : Particulars.Item.values()) {
            json.optionalText(item.word()).ifPresent(text -> items.put(item, text));
        }
        return new Particulars(items);
    }

    /**
     * Puts texts over those that are there; a blank one takes it away.
     *
     * @throws BadInput where the file can't be read or written; it is then as it was
     */
    public static Particulars change(Path job, Map<Particulars.Item, String> texts) {
        InsideFolder.requireOwnParts(job);
        Disk disk = new RealDisk();
        try {
            return FolderLock.holding(job, PATIENCE, () -> {
                Particulars changed = read(job).with(texts);
                JsonFields fields = new JsonFields();
                changed.items().forEach((item, text) -> fields.put(item.word(), text));
                String text = JsonWriter.write(fields);
                RecordBounds.check(JsonDocument.parse(text, "the particulars").plain(), BadInput.in("the particulars"));
                Path unfinished = Unfinished.in(job, FILE_NAME);
                try {
                    disk.write(unfinished, text.getBytes(StandardCharsets.UTF_8));
                    disk.rename(unfinished, job.resolve(FILE_NAME));
                } catch (IOException e) {
                    disk.delete(unfinished);
                    throw e;
                }
                disk.syncFolder(job);
                return changed;
            });
        } catch (IOException e) {
            throw DiskTrouble.writing(job, e);
        }
    }
}
