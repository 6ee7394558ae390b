package evenblade.keep.job;

import evenblade.base.problem.BadInput;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * How much a record may hold, whoever wrote it. Held when it is read and before it is written, so that nothing gets in
 * here that can't be read again.
 */
final class RecordBounds {
    /** Some ten printed pages; a longer remark is a paper to attach. */
    static final int LONGEST_TEXT = 30_000;
    /** Names and conditions stand in headings and pictures, which can't break a longer one into lines in any sensible time. */
    private static final int LONGEST_NAME = 1000;

    private static final Set<String> TEXTS = Set.of("text", "readings");
    /** A run a minute for a whole working week is 2400. */
    static final int MOST_ENTRIES = 20_000;
    /** No piece of a record lies deeper than eight levels. */
    private static final int DEEPEST = 16;

    private RecordBounds() {}

    /**
     * Refuses what is beyond a bound, with the place in the document.
     *
     * @param document as {@link evenblade.base.json.JsonObject#plain} gives it
     * @param place of the document, for the complaint
     */
    static void check(Map<String, ?> document, BadInput.Place place) {
        check(document, "", 0, place);
        if (document.get("events") instanceof List<?> events && events.size() > MOST_ENTRIES) {
            throw place.found(events.size() + " entries", "at most " + MOST_ENTRIES);
        }
    }

    private static void check(Object value, String path, int depth, BadInput.Place place) {
        if (depth > DEEPEST) {
            throw place.found("brackets inside brackets, " + depth + " deep", "at most " + DEEPEST);
        }
        int longest = TEXTS.contains(path.substring(path.lastIndexOf('.') + 1)) ? LONGEST_TEXT : LONGEST_NAME;
        if (value instanceof String text && text.length() > longest) {
            throw place.found("\"" + path + "\" with " + text.length() + " characters", "at most " + longest);
        } else if (value instanceof Map<?, ?> fields) {
            fields.forEach(
                    (key, inner) -> check(inner, path.isEmpty() ? key + "" : path + "." + key, depth + 1, place));
        } else if (value instanceof List<?> items) {
            for (int i = 0; i < items.size(); i++) {
                check(items.get(i), path + "[" + i + "]", depth + 1, place);
            }
        }
    }
}
