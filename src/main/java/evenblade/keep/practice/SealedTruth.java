package evenblade.keep.practice;

import evenblade.base.json.JsonDocument;
import evenblade.base.json.JsonFields;
import evenblade.base.json.JsonObject;
import evenblade.base.json.JsonWriter;
import evenblade.base.problem.BadInput;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;

/**
 * The truth about a practice job, so packed that nobody reads it by a glance: GZIP in Base64. It hides, it doesn't guard.
 *
 * @param faults what was wrong, in words
 * @param truths the truth file of each run, by its name
 */
public record SealedTruth(List<String> faults, Map<String, String> truths) {
    /** Its file in the job folder. */
    public static final String FILE_NAME = "sealed.txt";

    private static final int LINE_LENGTH = 76; // RFC 2045
    /** Some eighty times what is sealed of a practice job. */
    private static final int MOST_BYTES = 1 << 24;

    public SealedTruth {
        faults = List.copyOf(faults);
        truths = Map.copyOf(truths);
    }

    void write(Path job) throws IOException {
        JsonFields runs = new JsonFields();
        truths.keySet().stream().sorted().forEach(name -> runs.put(name, truths.get(name)));
        String text = JsonWriter.write(
                new JsonFields().put("faults", String.join("\n", faults)).put("runs", runs));
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream zip = new GZIPOutputStream(packed)) {
            zip.write(text.getBytes(StandardCharsets.UTF_8));
        }
        Files.writeString(
                job.resolve(FILE_NAME),
                Base64.getMimeEncoder(LINE_LENGTH, new byte[] {'\n'}).encodeToString(packed.toByteArray()) + "\n",
                StandardCharsets.US_ASCII);
    }

    /**
     * What is sealed in a job.
     *
     * @throws BadInput where nothing is, or it was changed
     */
    public static SealedTruth read(Path job) throws IOException {
        Path file = job.resolve(FILE_NAME);
        if (!Files.isRegularFile(file) || Files.size(file) > MOST_BYTES) {
            throw BadInput.in(job).found("no sealed answer", "a job that was made as a surprise");
        }
        String text;
        try (GZIPInputStream zip = new GZIPInputStream(
                new ByteArrayInputStream(Base64.getMimeDecoder().decode(Files.readAllBytes(file))))) {
            text = new String(zip.readNBytes(MOST_BYTES), StandardCharsets.UTF_8);
        } catch (IOException | IllegalArgumentException e) {
            throw BadInput.in(file).found("something else than a sealed answer", "the file as it was made");
        }
        JsonObject json = JsonDocument.parse(text, file.toString());
        Map<String, String> truths = new LinkedHashMap<>();
        JsonObject runs = json.object("runs");
        runs.keys().forEach(name -> truths.put(name, runs.text(name)));
        return new SealedTruth(List.of(json.text("faults").split("\n")), truths);
    }
}
