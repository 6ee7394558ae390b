package evenblade.base.json;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A value as read, with the line it starts at (counted from 1). */
sealed interface JsonValue {
    int line();

    /** What it is, for a complaint: {@code the text "four"}, {@code the number 3}. */
    String described();

    /** This value in the form that {@link JsonWriter} takes. */
    Object plain();

    record Text(String value, int line) implements JsonValue {
        private static final int SHOWN = 60; // about a line of a terminal

        @Override
        public String described() {
            return "the text \"" + (value.length() > SHOWN ? value.substring(0, SHOWN) + "…" : value) + "\"";
        }

        @Override
        public Object plain() {
            return value;
        }
    }

    record Number(double value, String written, int line) implements JsonValue {
        @Override
        public String described() {
            return "the number " + written;
        }

        @Override
        public Object plain() {
            boolean whole = written.indexOf('.') < 0 && written.indexOf('e') < 0 && written.indexOf('E') < 0;
            if (whole && Math.abs(value) < JsonObject.LARGEST_WHOLE) {
                return Long.valueOf((long) value);
            }
            return value;
        }
    }

    record Flag(boolean value, int line) implements JsonValue {
        @Override
        public String described() {
            return String.valueOf(value);
        }

        @Override
        public Object plain() {
            return value;
        }
    }

    record Nothing(int line) implements JsonValue {
        @Override
        public String described() {
            return "null";
        }

        @Override
        public Object plain() {
            return Optional.empty();
        }
    }

    record Items(List<JsonValue> values, int line) implements JsonValue {
        @Override
        public String described() {
            return "a list";
        }

        @Override
        public Object plain() {
            List<Object> all = new ArrayList<>();
            for (JsonValue value : values) {
                all.add(value.plain());
            }
            return all;
        }
    }

    record Fields(Map<String, JsonValue> values, int line) implements JsonValue {
        @Override
        public String described() {
            return "an object";
        }

        @Override
        public Object plain() {
            Map<String, Object> all = new LinkedHashMap<>();
            for (Map.Entry<String, JsonValue> field : values.entrySet()) {
                all.put(field.getKey(), field.getValue().plain());
            }
            return all;
        }
    }
}
