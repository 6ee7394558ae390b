package evenblade.machine.installation;

import evenblade.base.json.JsonFields;
import evenblade.base.json.JsonObject;
import evenblade.base.units.Angle;
import evenblade.base.units.Length;
import evenblade.machine.installation.Limit.PitchLimit;
import evenblade.machine.installation.Limit.Statistic;
import evenblade.machine.installation.Limit.Subject;
import java.util.ArrayList;
import java.util.List;

/** The keys under {@code limits}: each names what is limited and by which statistic. */
final class LimitKeys {
    private record LengthKey(String key, Subject what, Statistic statistic) {}

    private record PitchKey(String key, Statistic statistic) {}

    private static final List<LengthKey> LENGTHS = List.of(
            new LengthKey("trackSpread", Subject.TRACK, Statistic.SPREAD),
            new LengthKey("trackAboutMiddle", Subject.TRACK, Statistic.ABOUT_MIDDLE),
            new LengthKey("trackAboutMean", Subject.TRACK, Statistic.ABOUT_MEAN),
            new LengthKey("trackOppositeBlade", Subject.TRACK, Statistic.OPPOSITE_BLADE),
            new LengthKey("faceRunOut", Subject.FACE_RUN_OUT, Statistic.SPREAD));

    private static final List<PitchKey> ANGLES = List.of(
            new PitchKey("pitchSpread", Statistic.SPREAD),
            new PitchKey("pitchAboutMiddle", Statistic.ABOUT_MIDDLE),
            new PitchKey("pitchAboutMean", Statistic.ABOUT_MEAN));

    private LimitKeys() {}

    /** Refuses unknown keys; a limit on track or pitch without its statistic in words of its own. */
    static void check(JsonObject limits) {
        List<String> known = new ArrayList<>();
        for (LengthKey each : LENGTHS) {
            known.add(each.key());
        }
        for (PitchKey each : ANGLES) {
            known.add(each.key());
        }
        for (String subject : List.of("track", "pitch")) {
            if (limits.keys().contains(subject)) {
                known.removeIf(key -> !key.startsWith(subject));
                throw limits.place(subject)
                        .found(
                                "the limit \"" + subject + "\" without its statistic",
                                "one of " + String.join(", ", known));
            }
        }
        limits.requireOnly(known);
    }

    static List<Limit> lengths(JsonObject limits) {
        List<Limit> all = new ArrayList<>();
        for (LengthKey each : LENGTHS) {
            if (limits.has(each.key())) {
                JsonObject limit = limits.object(each.key()).requireOnly("value", "source");
                Length value = Length.parsePositive(limit.text("value"), limit.place("value"));
                all.add(new Limit(each.what(), each.statistic(), value, source(limit)));
            }
        }
        return all;
    }

    static List<PitchLimit> angles(JsonObject limits) {
        List<PitchLimit> all = new ArrayList<>();
        for (PitchKey each : ANGLES) {
            if (limits.has(each.key())) {
                JsonObject limit = limits.object(each.key()).requireOnly("value", "source");
                Angle value = Angle.parsePositive(limit.text("value"), limit.place("value"));
                all.add(new PitchLimit(each.statistic(), value, source(limit)));
            }
        }
        return all;
    }

    static JsonFields written(Installation installation) {
        JsonFields all = new JsonFields();
        for (LengthKey each : LENGTHS) {
            for (Limit limit : installation.limits()) {
                if (limit.what() == each.what() && limit.statistic() == each.statistic()) {
                    all.put(each.key(), entry(limit.value().text(), limit.source()));
                }
            }
        }
        for (PitchKey each : ANGLES) {
            for (PitchLimit limit : installation.pitchLimits()) {
                if (limit.statistic() == each.statistic()) {
                    all.put(each.key(), entry(limit.value().text(), limit.source()));
                }
            }
        }
        return all;
    }

    private static JsonFields entry(String value, String source) {
        return new JsonFields().put("value", value).put("source", source);
    }

    private static String source(JsonObject limit) {
        String source = limit.text("source").strip();
        if (source.isEmpty()) {
            throw limit.refuse("source", "who sets the limit");
        }
        return source;
    }
}
