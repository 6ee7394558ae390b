package evenblade.base.json;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A value as read.
 *
 * @param value a text, a {@code Double}, true or false, an empty {@code Optional} for null, a list or a map of these
 * @param written a number as it stands in the document; else empty
 * @param line that it starts at, counted from 1
 */
record JsonValue(Object value, String written, int line) {
    private static final int SHOWN = 60; // about a line of a terminal

    /** What it is, for a complaint: {@code the text "four"}, {@code the number 3}. */
    String described() {
        if (value instanceof String text) {
            return "the text \"" + (text.length() > SHOWN ? text.substring(0, SHOWN) + "…" : text) + "\"";
        }
        return value instanceof Double
                ? "the number " + written
                : value instanceof List
                        ? "a list"
                        : value instanceof Map ? "an object" : value instanceof Optional ? "null" : value.toString();
    }

    /** This value in the form that {@link JsonWriter} takes. */
    Object plain() {
        if (value instanceof List<?> items) {
            List<Object> all = new ArrayList<>();
            for (Object item : items) {
                all.add(((JsonValue) item).plain());
            }
            return all;
        }
        if (value instanceof Map) {
            Map<String, Object> all = new LinkedHashMap<>();
            for (Map.Entry<String, JsonValue> field : fields().entrySet()) {
                all.put(field.getKey(), field.getValue().plain());
            }
            return all;
        }
        boolean whole = value instanceof Double number
                && written.indexOf('.') < 0
                && written.indexOf('e') < 0
                && written.indexOf('E') < 0
                && Math.abs(number) < JsonObject.LARGEST_WHOLE;
        return whole ? (Object) ((Double) value).longValue() : value;
    }

    /** The fields of an object. */
    @SuppressWarnings("unchecked") // the reader makes no other map
    Map<String, JsonValue> fields() {
        return (Map<String, JsonValue>) value;
    }
}
