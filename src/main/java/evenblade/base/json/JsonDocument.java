package evenblade.base.json;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import evenblade.base.problem.BadInput;
import evenblade.base.problem.PlainFile;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Reads a JSON document strictly: UTF-8, one object, no doubled key, nothing after it. Only Jackson's
 * streaming parser is used: binding to classes would cost more time at start than the whole reading.
 */
public final class JsonDocument {
    /** Larger files are refused; no document of this program comes near it. */
    private static final long LARGEST_BYTES = 64L << 20;

    private final BadInput.Place source;
    private final JsonParser parser;

    private JsonDocument(BadInput.Place source, JsonParser parser) {
        this.source = source;
        this.parser = parser;
    }

    /**
     * Reads a file whose outermost value is an object.
     *
     * @throws BadInput where the file is missing, is no file, or isn't such a document
     */
    public static JsonObject read(Path file) {
        BadInput.Place place = BadInput.in(file);
        PlainFile.require(file, "a JSON file");
        byte[] bytes;
        try {
            if (Files.size(file) > LARGEST_BYTES) {
                throw place.found("a file of " + Files.size(file) + " bytes", "a JSON file of at most 64 MB");
            }
            bytes = Files.readAllBytes(file);
        } catch (IOException e) {
            throw place.found("the file can't be read", "a readable JSON file");
        }
        return parse(decode(bytes, place), place);
    }

    /** Reads a document that is already text; {@code source} names it in complaints. */
    public static JsonObject parse(String text, String source) {
        return parse(text, BadInput.in(source));
    }

    private static JsonObject parse(String text, BadInput.Place source) {
        if (text.isBlank()) {
            throw source.found("an empty file", "a JSON document");
        }
        try (JsonParser parser = new JsonFactory().createParser(text)) {
            return new JsonDocument(source, parser).outermost();
        } catch (JsonProcessingException e) {
            int line = e.getLocation() == null ? 1 : e.getLocation().getLineNr();
            throw source.line(line).found("not JSON: " + unfinished(e.getOriginalMessage()), "a JSON document");
        } catch (IOException e) {
            throw new UncheckedIOException("reading text from memory failed", e);
        }
    }

    private static String unfinished(String message) {
        String line = message.lines().findFirst().orElse("");
        return line.endsWith(".") ? line.substring(0, line.length() - 1) : line;
    }

    private static String decode(byte[] bytes, BadInput.Place place) {
        CharBuffer text = CharBuffer.allocate(bytes.length);
        ByteBuffer in = ByteBuffer.wrap(bytes);
        CoderResult result = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT)
                .decode(in, text, true);
        text.flip();
        if (result.isError()) {
            long line = 1 + text.chars().filter(c -> c == '\n').count();
            throw place.line(line)
                    .found(String.format(java.util.Locale.ROOT, "the byte 0x%02X", bytes[in.position()]), "UTF-8 text");
        }
        String decoded = text.toString();
        return decoded.startsWith("\uFEFF") ? decoded.substring(1) : decoded;
    }

    private JsonObject outermost() throws IOException {
        parser.nextToken();
        JsonValue value = value();
        if (!(value.value() instanceof Map)) {
            throw source.line(value.line()).found(value.described(), "an object { … }");
        }
        if (parser.nextToken() != null) {
            throw source.line(line()).found("more text after the end of the document", "nothing after the last }");
        }
        return new JsonObject(source, "", value);
    }

    private JsonValue value() throws IOException {
        int line = line();
        JsonToken token = parser.currentToken();
        return switch (token) {
            case START_OBJECT -> fields(line);
            case START_ARRAY -> items(line);
            case VALUE_STRING -> new JsonValue(parser.getText(), "", line);
            case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> number(line);
            case VALUE_TRUE -> new JsonValue(true, "", line);
            case VALUE_FALSE -> new JsonValue(false, "", line);
            case VALUE_NULL -> new JsonValue(Optional.empty(), "", line);
            default -> throw new IllegalStateException("token " + token + " where a value starts");
        };
    }

    private JsonValue number(int line) throws IOException {
        String written = parser.getText();
        double value = Double.parseDouble(written);
        if (!Double.isFinite(value)) {
            throw source.line(line).found("the number " + written, "a number below 1.8e308");
        }
        return new JsonValue(value, written, line);
    }

    private JsonValue items(int line) throws IOException {
        List<JsonValue> values = new ArrayList<>();
        while (parser.nextToken() != JsonToken.END_ARRAY) {
            values.add(value());
        }
        return new JsonValue(values, "", line);
    }

    private JsonValue fields(int line) throws IOException {
        Map<String, JsonValue> values = new LinkedHashMap<>();
        while (parser.nextToken() != JsonToken.END_OBJECT) {
            String key = parser.currentName();
            int keyLine = line();
            parser.nextToken();
            JsonValue earlier = values.putIfAbsent(key, value());
            if (earlier != null) {
                throw source.line(keyLine)
                        .found("the key \"" + key + "\" again (first in line " + earlier.line() + ")", "each key once");
            }
        }
        return new JsonValue(values, "", line);
    }

    private int line() {
        return parser.currentTokenLocation().getLineNr();
    }
}
