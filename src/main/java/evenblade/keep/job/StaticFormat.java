package evenblade.keep.job;

import evenblade.base.fact.Worded;
import evenblade.base.json.JsonFields;
import evenblade.base.json.JsonObject;
import evenblade.base.problem.BadInput;
import evenblade.judge.tracking.Layout;
import evenblade.judge.tracking.PitchReadings.Reference;
import evenblade.machine.installation.HubCounting;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;

/** Static readings as JSON: the texts as they were entered. */
final class StaticFormat {
    private StaticFormat() {}

    static void write(Detail.Tracking tracking, JsonFields json) {
        json.put("layout", named(tracking.layout()))
                .put("readings", tracking.readings())
                .put("sigma", tracking.sigma());
    }

    static void write(Detail.Pitch pitch, JsonFields json) {
        json.put("layout", named(pitch.layout()))
                .put("readings", pitch.readings())
                .put("zero", pitch.zero())
                .put("reference", pitch.reference().word())
                .put("station", pitch.station())
                .put("sigma", pitch.sigma());
    }

    static void write(Detail.RunOut runOut, JsonFields json) {
        json.put("total", runOut.total()).put("dialRadius", runOut.dialRadius()).put("high", runOut.high());
    }

    static Detail.Tracking tracking(JsonObject json) {
        List<String> blades = blades(json.object("layout"));
        String readings = json.text("readings");
        Optional<String> sigma = json.optionalText("sigma");
        return atLine(json, "readings", () -> new Detail.Tracking(new Layout(blades), readings, sigma));
    }

    static Detail.Pitch pitch(JsonObject json) {
        List<String> blades = blades(json.object("layout"));
        String readings = json.text("readings");
        Optional<String> zero = json.optionalText("zero");
        String word = json.word(
                "reference",
                Arrays.stream(Reference.values()).map(Reference::word).toList());
        Reference reference = Worded.named(Reference.class, word).orElseThrow();
        Optional<String> station = json.optionalText("station");
        Optional<String> sigma = json.optionalText("sigma");
        return atLine(
                json,
                "readings",
                () -> new Detail.Pitch(new Layout(blades), readings, zero, reference, station, sigma));
    }

    static void write(Detail.Balance balance, JsonFields json) {
        balance.on().ifPresent(weight -> json.put("mass", weight.mass())
                .put("radius", weight.radius())
                .put("angle", weight.angle()));
        balance.off().ifPresent(off -> json.put("off", off));
        balance.counted().ifPresent(counted -> json.put("anglesCounted", counted.word()));
    }

    static Detail.Balance balance(JsonObject json) {
        Optional<HubWeight> on = json.has("mass")
                ? Optional.of(atLine(
                        json, "mass", () -> new HubWeight(json.text("mass"), json.text("radius"), json.text("angle"))))
                : Optional.empty();
        return new Detail.Balance(
                on,
                json.optionalText("off"),
                json.optionalWord("anglesCounted", HubCounting.words()).map(HubCounting::named));
    }

    static Detail.RunOut runOut(JsonObject json) {
        String total = json.text("total");
        String dialRadius = json.text("dialRadius");
        Optional<String> high = json.optionalText("high");
        return atLine(json, "total", () -> new Detail.RunOut(total, dialRadius, high));
    }

    private static Map<String, Object> named(Layout layout) {
        Map<String, Object> named = new LinkedHashMap<>();
        layout.byPosition().forEach((position, blade) -> named.put(String.valueOf(position), blade));
        return named;
    }

    private static List<String> blades(JsonObject layout) {
        List<String> blades = new ArrayList<>();
        for (int position = 1; position <= layout.keys().size(); position++) {
            blades.add(layout.text(String.valueOf(position)));
        }
        return blades;
    }

    /** Says where in the file a text stands that can't be read any more. */
    private static <T> T atLine(JsonObject json, String key, Supplier<T> detail) {
        try {
            return detail.get();
        } catch (BadInput e) {
            throw json.place(key).found(e.getMessage(), "the texts as they were entered");
        }
    }
}
