package evenblade.base.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import evenblade.base.problem.BadInput;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JsonDocumentTest {
    private static JsonObject read(String text) {
        return JsonDocument.parse(text, "a.json");
    }

    private static void refused(ThrowingCallable reading, String message) {
        assertThatExceptionOfType(BadInput.class).isThrownBy(reading).withMessage(message);
    }

    @Test
    void valuesAreReadByKind() {
        JsonObject json =
                read("{\"a\": \"x\", \"b\": 1.5, \"c\": 3, \"d\": true, \"e\": {\"f\": [1, 2]}, \"g\": null}");
        assertThat(json.text("a")).isEqualTo("x");
        assertThat(json.number("b")).isEqualTo(1.5);
        assertThat(json.whole("c", 0, 10)).isEqualTo(3);
        assertThat(json.flag("d")).isTrue();
        assertThat(json.object("e").numbers("f")).containsExactly(1.0, 2.0);
        assertThat(json.optionalText("g")).isEmpty();
        assertThat(json.has("g")).isFalse();
        assertThat(json.keys()).containsExactly("a", "b", "c", "d", "e", "g");
    }

    @Test
    void aDoubledKeyIsRefusedWithBothLines() {
        refused(
                () -> read("{\"a\": 1,\n\"b\": 2,\n\"a\": 3}"),
                "a.json:3: the key \"a\" again (first in line 1), expected each key once");
    }

    @Test
    void brokenTextIsRefusedWithItsLine() {
        assertThatExceptionOfType(BadInput.class)
                .isThrownBy(() -> read("{\"a\": 1,\n \"b\" 2}"))
                .withMessageStartingWith("a.json:2: not JSON: Unexpected character ('2'")
                .withMessageEndingWith(", expected a JSON document");
        assertThatExceptionOfType(BadInput.class)
                .isThrownBy(() -> read("{\"a\": [1,\n"))
                .withMessageStartingWith("a.json:2: not JSON: ");
        assertThatExceptionOfType(BadInput.class)
                .isThrownBy(() -> read("{\"a\": NaN}"))
                .withMessageStartingWith("a.json:1: not JSON: ");
    }

    @Test
    void whatFollowsTheDocumentIsRefused() {
        refused(
                () -> read("{}\n{}"),
                "a.json:2: more text after the end of the document, expected nothing after the last }");
    }

    @Test
    void onlyAnObjectIsADocument() {
        refused(() -> read("[1]"), "a.json:1: a list, expected an object { … }");
    }

    @Test
    void aNumberTooLargeToHoldIsRefused() {
        refused(() -> read("{\"a\": 1e999}"), "a.json:1: the number 1e999, expected a number below 1.8e308");
    }

    @Test
    void wrongKindsAreToldWithTheirPath() {
        JsonObject json = read("{\"list\": [{\"a\": 1},\n 7], \"words\": [\"x\",\n\n 2]}");
        refused(() -> json.objects("list"), "a.json:2: \"list[1]\" is the number 7, expected an object { … }");
        refused(() -> json.texts("words"), "a.json:4: \"words[1]\" is the number 2, expected a text in quotes");
        refused(() -> json.text("words"), "a.json:2: \"words\" is a list, expected a text in quotes");
        refused(() -> json.number("none"), "a.json:1: no key \"none\", expected a number");
    }

    @Test
    void anUnknownKeyIsToldWithTheNearestKnownOne() {
        refused(
                () -> read("{\"lable\": 1}").requireOnly("at", "label", "text"),
                "a.json:1: unknown key \"lable\", expected \"label\" (the nearest known key)");
    }

    @Test
    void bytesThatAreNoUtf8AreRefusedWithTheirLine(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("latin.json");
        Files.write(file, new byte[] {'{', '\n', '"', (byte) 0xE4, '"', ':', '1', '}'});
        refused(() -> JsonDocument.read(file), file + ":2: the byte 0xE4, expected UTF-8 text");
    }

    @Test
    void aByteOrderMarkIsNoContent(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("bom.json"), "\uFEFF{\"a\": 1}");
        assertThat(JsonDocument.read(file).number("a")).isEqualTo(1);
    }

    @Test
    void fieldsAreWrittenInOrderWhateverTheLocale() {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.GERMANY);
            String written = JsonWriter.write(new JsonFields()
                    .put("z", 1234.5)
                    .put("a", List.of(1, 2))
                    .put("none", OptionalDouble.empty())
                    .put("some", Optional.of("ä\n")));
            assertThat(written)
                    .isEqualTo(
                            "{\n  \"z\" : 1234.5,\n  \"a\" : [ 1, 2 ],\n  \"none\" : null,\n  \"some\" : \"ä\\n\"\n}\n");
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void whatWasReadIsCopiedUnchanged() {
        String text = "{\n  \"a\" : 4,\n  \"b\" : 4.0,\n  \"c\" : null,\n  \"d\" : [ {\n    \"e\" : true\n  } ]\n}\n";
        assertThat(JsonWriter.write(read(text).plain())).isEqualTo(text);
    }

    @Test
    void aNumberThatIsNoneIsNeverWritten() {
        assertThatIllegalArgumentException().isThrownBy(() -> JsonWriter.write(new JsonFields().put("a", Double.NaN)));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> JsonWriter.write(new JsonFields().put("a", Double.POSITIVE_INFINITY)));
    }
}
