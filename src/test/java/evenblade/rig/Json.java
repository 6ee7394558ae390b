package evenblade.rig;

import java.util.List;
import java.util.Map;

/** Writes maps, lists, numbers, words and truth values as JSON. */
final class Json {
    private Json() {}

    static String write(Object value) {
        StringBuilder out = new StringBuilder();
        put(out, value);
        return out.append('\n').toString();
    }

    private static void put(StringBuilder out, Object value) {
        if (value instanceof Map<?, ?> map) {
            char before = '{';
            for (Map.Entry<?, ?> entry : map.entrySet()) {
                out.append(before);
                word(out, String.valueOf(entry.getKey()));
                out.append(": ");
                put(out, entry.getValue());
                before = ',';
            }
            out.append(map.isEmpty() ? "{}" : "}");
        } else if (value instanceof List<?> list) {
            out.append('[');
            for (int i = 0; i < list.size(); i++) {
                out.append(i == 0 ? "" : ", ");
                put(out, list.get(i));
            }
            out.append("]\n");
        } else if (value instanceof Number || value instanceof Boolean) {
            out.append(value);
        } else {
            word(out, String.valueOf(value));
        }
    }

    private static void word(StringBuilder out, String text) {
        out.append('"')
                .append(text.replace("\\", "\\\\").replace("\"", "\\\"").replace("\n", "\\n"))
                .append('"');
    }
}
