package evenblade.app;

import evenblade.findings.RunNumbers;
import evenblade.json.JsonDocument;
import evenblade.json.JsonFields;
import evenblade.json.JsonObject;
import evenblade.json.JsonWriter;
import evenblade.problem.BadInput;
import evenblade.recording.ChannelQuality;
import evenblade.recording.StampQuality;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** The form in which a job's cache keeps what findings need of a run. */
final class KeptNumbers {
    /** To be raised with every change of this form or of what is measured. */
    static final int FORMAT = 1;

    private KeptNumbers() {}

    static byte[] written(RunNumbers run) {
        JsonFields json = new JsonFields()
                .put("fileChannels", run.fileChannels())
                .put("durationS", run.durationS())
                .put("speedDoubt", run.speedDoubt())
                .put("ratio", run.ratio())
                .put("channels", run.channels().stream().map(KeptRun::channel).toList())
                .put("quality", run.quality().stream().map(KeptNumbers::quality).toList())
                .put("stamps", run.stamps().map(KeptNumbers::stamps));
        return JsonWriter.write(json).getBytes(StandardCharsets.UTF_8);
    }

    private static JsonFields quality(ChannelQuality quality) {
        return new JsonFields()
                .put("channel", quality.channel())
                .put("clippedShare", quality.clippedShare())
                .put("longestStuckRun", quality.longestStuckRun())
                .put("peak", quality.peak())
                .put("mean", quality.mean())
                .put("rms", quality.rms());
    }

    private static JsonFields stamps(StampQuality stamps) {
        return new JsonFields()
                .put("medianStepS", stamps.medianStepS())
                .put("jitterShare", stamps.jitterShare())
                .put("gaps", stamps.gaps())
                .put("lostS", stamps.lostS())
                .put("unsorted", stamps.unsorted())
                .put("doubled", stamps.doubled());
    }

    /** The numbers again; empty where the bytes aren't in this form. */
    static Optional<RunNumbers> read(byte[] bytes) {
        try {
            JsonObject json = JsonDocument.parse(new String(bytes, StandardCharsets.UTF_8), "kept result");
            return Optional.of(new RunNumbers(
                    json.texts("fileChannels"),
                    json.number("durationS"),
                    json.optionalText("speedDoubt"),
                    json.number("ratio"),
                    json.objects("channels").stream().map(KeptRun::channel).toList(),
                    json.objects("quality").stream().map(KeptNumbers::quality).toList(),
                    json.optionalObject("stamps").map(KeptNumbers::stamps)));
        } catch (BadInput | IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    private static ChannelQuality quality(JsonObject json) {
        return new ChannelQuality(
                json.text("channel"),
                json.number("clippedShare"),
                json.whole("longestStuckRun", 0, Integer.MAX_VALUE),
                json.number("peak"),
                json.number("mean"),
                json.number("rms"));
    }

    private static StampQuality stamps(JsonObject json) {
        return new StampQuality(
                json.number("medianStepS"),
                json.number("jitterShare"),
                json.whole("gaps", 0, Integer.MAX_VALUE),
                json.number("lostS"),
                json.whole("unsorted", 0, Integer.MAX_VALUE),
                json.whole("doubled", 0, Integer.MAX_VALUE));
    }
}
