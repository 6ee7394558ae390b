package evenblade.base.json;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The fields of an object to be written, in the order they are put in. Values: text, numbers, true and
 * false, {@code Optional} and its kin (empty is written as null), lists, maps, and {@code JsonFields}.
 */
public final class JsonFields {
    private final Map<String, Object> values = new LinkedHashMap<>();

    /** Adds a field; each key once. */
    public JsonFields put(String key, Object value) {
        if (values.putIfAbsent(key, value) != null) {
            throw new IllegalArgumentException("the key '" + key + "' was put twice");
        }
        return this;
    }

    Map<String, Object> values() {
        return Collections.unmodifiableMap(values);
    }
}
