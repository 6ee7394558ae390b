package evenblade.base.json;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Writes JSON documents: fields in the order given, line feeds only, no locale, only finite numbers. */
public final class JsonWriter {
    private final JsonGenerator generator;

    private JsonWriter(JsonGenerator generator) {
        this.generator = generator;
    }

    /** The document as indented text that ends with a line feed. */
    public static String write(JsonFields document) {
        return write(document.values());
    }

    /** The document as indented text that ends with a line feed; values as in {@link JsonFields}. */
    public static String write(Map<String, ?> document) {
        StringWriter text = new StringWriter();
        DefaultIndenter indent = new DefaultIndenter("  ", "\n");
        try (JsonGenerator generator = new JsonFactory().createGenerator(text)) {
            generator.setPrettyPrinter(new DefaultPrettyPrinter().withObjectIndenter(indent));
            new JsonWriter(generator).value(document);
        } catch (IOException e) {
            throw new UncheckedIOException("writing text to memory failed", e);
        }
        return wholeCharacters(text.append('\n').toString());
    }

    /** Half a character, which UTF-8 has no bytes for, stands only in texts: it is escaped there. */
    private static String wholeCharacters(String text) {
        if (text.codePoints().noneMatch(c -> Character.getType(c) == Character.SURROGATE)) {
            return text;
        }
        StringBuilder whole = new StringBuilder(text.length() + 16);
        text.codePoints().forEach(c -> {
            if (Character.getType(c) == Character.SURROGATE) {
                whole.append(String.format(Locale.ROOT, "\\u%04x", c));
            } else {
                whole.appendCodePoint(c);
            }
        });
        return whole.toString();
    }

    private void value(Object value) throws IOException {
        if (value instanceof String text) {
            generator.writeString(text);
        } else if (value instanceof Boolean flag) {
            generator.writeBoolean(flag);
        } else if (value instanceof Integer || value instanceof Long) {
            generator.writeNumber(((Number) value).longValue());
        } else if (value instanceof Double number) {
            finite(number);
        } else if (value instanceof OptionalDouble number) {
            value(number.isPresent() ? Optional.of(number.getAsDouble()) : Optional.empty());
        } else if (value instanceof OptionalInt number) {
            value(number.isPresent() ? Optional.of(number.getAsInt()) : Optional.empty());
        } else if (value instanceof Optional<?> optional) {
            if (optional.isPresent()) {
                value(optional.get());
            } else {
                generator.writeNull();
            }
        } else if (value instanceof JsonFields fields) {
            object(fields.values());
        } else if (value instanceof Map<?, ?> map) {
            object(map);
        } else if (value instanceof Iterable<?> items) {
            generator.writeStartArray();
            for (Object item : items) {
                value(item);
            }
            generator.writeEndArray();
        } else {
            throw new IllegalArgumentException("no JSON form for "
                    + (value == null ? "null" : value.getClass().getName()));
        }
    }

    private void object(Map<?, ?> fields) throws IOException {
        generator.writeStartObject();
        for (Map.Entry<?, ?> field : fields.entrySet()) {
            generator.writeFieldName((String) field.getKey());
            value(field.getValue());
        }
        generator.writeEndObject();
    }

    private void finite(double number) throws IOException {
        if (!Double.isFinite(number)) {
            throw new IllegalArgumentException("JSON has no number for " + number);
        }
        generator.writeNumber(number);
    }
}
