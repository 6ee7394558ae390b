package evenblade.base.json;

import evenblade.base.problem.BadInput;
import evenblade.base.problem.Nearest;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;

/**
 * An object of a JSON document as read. Asking for a value of one kind where another stands, or for a
 * key that isn't there, throws {@link BadInput} with file and line. {@code null} counts as absent.
 *
 * <p>Written without lambdas: every command reads JSON, and the first lambda of a process is dear.
 */
public final class JsonObject {
    /** Whole numbers beyond this can't be told from their neighbours in double precision. */
    static final double LARGEST_WHOLE = 0x1p53;

    private final BadInput.Place source;
    private final String path;
    private final JsonValue.Fields fields;

    JsonObject(BadInput.Place source, String path, JsonValue.Fields fields) {
        this.source = source;
        this.path = path;
        this.fields = fields;
    }

    /** Refuses any other key, with its name and the nearest known one. */
    public JsonObject requireOnly(String... known) {
        return requireOnly(List.of(known));
    }

    /** Refuses any other key, with its name and the nearest known one. */
    public JsonObject requireOnly(List<String> known) {
        for (Map.Entry<String, JsonValue> field : fields.values().entrySet()) {
            String key = field.getKey();
            if (!known.contains(key)) {
                String nearest = Nearest.to(key, known).orElseThrow();
                throw source.line(field.getValue().line())
                        .found(
                                "unknown key \"" + key + "\"" + (path.isEmpty() ? "" : " in \"" + path + "\""),
                                "\"" + nearest + "\" (the nearest known key)");
            }
        }
        return this;
    }

    /** Keys in file order. */
    public Set<String> keys() {
        return Collections.unmodifiableSet(fields.values().keySet());
    }

    /** Whether the key is there with a value other than null. */
    public boolean has(String key) {
        return present(key) != null;
    }

    /** Where the object starts. */
    public BadInput.Place place() {
        return source.line(fields.line());
    }

    /** Where the value of a key stands; where the object starts if the key isn't there. */
    public BadInput.Place place(String key) {
        JsonValue value = fields.values().get(key);
        return value == null ? place() : source.line(value.line());
    }

    /** A complaint about the value of a key: {@code "engine.cylinders" is the number 99}. */
    public BadInput refuse(String key, String expected) {
        JsonValue value = fields.values().get(key);
        return place(key)
                .found(value == null ? missing(key) : "\"" + fullName(key) + "\" is " + value.described(), expected);
    }

    public String text(String key) {
        Optional<String> text = optionalText(key);
        if (text.isEmpty()) {
            throw refuse(key, "a text");
        }
        return text.get();
    }

    public Optional<String> optionalText(String key) {
        JsonValue value = present(key);
        if (value == null) {
            return Optional.empty();
        }
        if (value instanceof JsonValue.Text text) {
            return Optional.of(text.value());
        }
        throw refuse(key, "a text in quotes");
    }

    /** A text that must be one of a few words. */
    public String word(String key, List<String> known) {
        Optional<String> word = optionalWord(key, known);
        if (word.isEmpty()) {
            throw refuse(key, oneOf(known));
        }
        return word.get();
    }

    /** A text that must be one of a few words, where it is given. */
    public Optional<String> optionalWord(String key, List<String> known) {
        Optional<String> word = optionalText(key);
        if (word.isPresent() && !known.contains(word.get())) {
            throw refuse(key, oneOf(known));
        }
        return word;
    }

    public double number(String key) {
        OptionalDouble number = optionalNumber(key);
        if (number.isEmpty()) {
            throw refuse(key, "a number");
        }
        return number.getAsDouble();
    }

    public OptionalDouble optionalNumber(String key) {
        return optionalNumber(key, "a number");
    }

    private OptionalDouble optionalNumber(String key, String expected) {
        JsonValue value = present(key);
        if (value == null) {
            return OptionalDouble.empty();
        }
        if (value instanceof JsonValue.Number number) {
            return OptionalDouble.of(number.value());
        }
        throw refuse(key, expected);
    }

    /** A number within bounds, both included. */
    public double number(String key, double least, double most) {
        OptionalDouble number = optionalNumber(key, least, most);
        if (number.isEmpty()) {
            throw refuse(key, "a number" + between(least, most));
        }
        return number.getAsDouble();
    }

    /** A number within bounds, both included, where it is given. */
    public OptionalDouble optionalNumber(String key, double least, double most) {
        String expected = "a number" + between(least, most);
        OptionalDouble number = optionalNumber(key, expected);
        if (number.isPresent() && !(number.getAsDouble() >= least && number.getAsDouble() <= most)) {
            throw refuse(key, expected);
        }
        return number;
    }

    /** A whole number within bounds, both included. */
    public int whole(String key, int least, int most) {
        OptionalInt number = optionalWhole(key, least, most);
        if (number.isEmpty()) {
            throw refuse(key, "a whole number" + between(least, most));
        }
        return number.getAsInt();
    }

    /** A whole number within bounds, both included, where it is given. */
    public OptionalInt optionalWhole(String key, int least, int most) {
        JsonValue value = present(key);
        if (value == null) {
            return OptionalInt.empty();
        }
        if (value instanceof JsonValue.Number number
                && number.value() == Math.rint(number.value())
                && number.value() >= least
                && number.value() <= most) {
            return OptionalInt.of((int) number.value());
        }
        throw refuse(key, "a whole number" + between(least, most));
    }

    public boolean flag(String key) {
        Optional<Boolean> flag = optionalFlag(key);
        if (flag.isEmpty()) {
            throw refuse(key, "true or false");
        }
        return flag.get();
    }

    public Optional<Boolean> optionalFlag(String key) {
        JsonValue value = present(key);
        if (value == null) {
            return Optional.empty();
        }
        if (value instanceof JsonValue.Flag flag) {
            return Optional.of(flag.value());
        }
        throw refuse(key, "true or false");
    }

    public JsonObject object(String key) {
        Optional<JsonObject> object = optionalObject(key);
        if (object.isEmpty()) {
            throw refuse(key, "an object { … }");
        }
        return object.get();
    }

    public Optional<JsonObject> optionalObject(String key) {
        JsonValue value = present(key);
        if (value == null) {
            return Optional.empty();
        }
        if (value instanceof JsonValue.Fields inner) {
            return Optional.of(new JsonObject(source, fullName(key), inner));
        }
        throw refuse(key, "an object { … }");
    }

    /** A list of objects; empty where the key is absent. */
    public List<JsonObject> objects(String key) {
        List<JsonObject> all = new ArrayList<>();
        for (JsonValue item : items(key, "a list of objects")) {
            if (!(item instanceof JsonValue.Fields inner)) {
                throw refuseItem(key, all.size(), item, "an object { … }");
            }
            all.add(new JsonObject(source, itemName(key, all.size()), inner));
        }
        return all;
    }

    /** A list of texts; empty where the key is absent. */
    public List<String> texts(String key) {
        List<String> all = new ArrayList<>();
        for (JsonValue item : items(key, "a list of texts")) {
            if (!(item instanceof JsonValue.Text text)) {
                throw refuseItem(key, all.size(), item, "a text in quotes");
            }
            all.add(text.value());
        }
        return all;
    }

    /** A list of numbers; empty where the key is absent. */
    public List<Double> numbers(String key) {
        List<Double> all = new ArrayList<>();
        for (JsonValue item : items(key, "a list of numbers")) {
            if (!(item instanceof JsonValue.Number number)) {
                throw refuseItem(key, all.size(), item, "a number");
            }
            all.add(number.value());
        }
        return all;
    }

    /** The whole object in the form that {@link JsonWriter} takes, to be copied as it is. */
    public Map<String, Object> plain() {
        @SuppressWarnings("unchecked") // Fields.plain makes exactly this map
        Map<String, Object> all = (Map<String, Object>) fields.plain();
        return all;
    }

    private List<JsonValue> items(String key, String expected) {
        JsonValue value = present(key);
        if (value == null) {
            return List.of();
        }
        if (value instanceof JsonValue.Items items) {
            return items.values();
        }
        throw refuse(key, expected);
    }

    private BadInput refuseItem(String key, int index, JsonValue item, String expected) {
        return source.line(item.line()).found("\"" + itemName(key, index) + "\" is " + item.described(), expected);
    }

    /** The value of a key; null inside this class only, where there is none or the document says null. */
    private JsonValue present(String key) {
        JsonValue value = fields.values().get(key);
        return value instanceof JsonValue.Nothing ? null : value;
    }

    private String missing(String key) {
        return "no key \"" + key + "\"" + (path.isEmpty() ? "" : " in \"" + path + "\"");
    }

    private String fullName(String key) {
        return path.isEmpty() ? key : path + "." + key;
    }

    private String itemName(String key, int index) {
        return fullName(key) + "[" + index + "]";
    }

    private static String oneOf(List<String> words) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < words.size(); i++) {
            String between = i == 0 ? "" : i == words.size() - 1 ? " or " : ", ";
            text.append(between).append('"').append(words.get(i)).append('"');
        }
        return text.toString();
    }

    private static String between(double least, double most) {
        return " from " + plainNumber(least) + " to " + plainNumber(most);
    }

    private static String plainNumber(double value) {
        return value == Math.rint(value) ? String.format(Locale.ROOT, "%.0f", value) : Double.toString(value);
    }
}
