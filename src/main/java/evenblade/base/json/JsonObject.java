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
    private final JsonValue object;

    JsonObject(BadInput.Place source, String path, JsonValue object) {
        this.source = source;
        this.path = path;
        this.object = object;
    }

    /** Refuses any other key, with its name and the nearest known one. */
    public JsonObject requireOnly(String... known) {
        return requireOnly(List.of(known));
    }

    /** Refuses any other key, with its name and the nearest known one. */
    public JsonObject requireOnly(List<String> known) {
        for (Map.Entry<String, JsonValue> field : object.fields().entrySet()) {
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
        return Collections.unmodifiableSet(object.fields().keySet());
    }

    /** Whether the key is there with a value other than null. */
    public boolean has(String key) {
        return present(key) != null;
    }

    /** Where the object starts. */
    public BadInput.Place place() {
        return source.line(object.line());
    }

    /** Where the value of a key stands; where the object starts if the key isn't there. */
    public BadInput.Place place(String key) {
        JsonValue value = object.fields().get(key);
        return (value == null ? place() : source.line(value.line())).key(fullName(key));
    }

    /** A complaint about the value of a key: {@code "engine.cylinders" is the number 99}. */
    public BadInput refuse(String key, String expected) {
        JsonValue value = object.fields().get(key);
        return place(key)
                .found(value == null ? missing(key) : "\"" + fullName(key) + "\" is " + value.described(), expected);
    }

    public String text(String key) {
        return required(optionalText(key), key, "a text");
    }

    public Optional<String> optionalText(String key) {
        return optional(key, String.class, "a text in quotes");
    }

    /** A text that must be one of a few words. */
    public String word(String key, List<String> known) {
        return required(optionalWord(key, known), key, oneOf(known));
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
        return required(optional(key, Double.class, "a number"), key, "a number");
    }

    public OptionalDouble optionalNumber(String key) {
        return primitive(optional(key, Double.class, "a number"));
    }

    /** A number within bounds, both included. */
    public double number(String key, double least, double most) {
        return required(bounded(key, least, most), key, "a number" + between(least, most));
    }

    /** A number within bounds, both included, where it is given. */
    public OptionalDouble optionalNumber(String key, double least, double most) {
        return primitive(bounded(key, least, most));
    }

    private Optional<Double> bounded(String key, double least, double most) {
        String expected = "a number" + between(least, most);
        Optional<Double> number = optional(key, Double.class, expected);
        if (number.isPresent() && !(number.get() >= least && number.get() <= most)) {
            throw refuse(key, expected);
        }
        return number;
    }

    private static OptionalDouble primitive(Optional<Double> number) {
        return number.isPresent() ? OptionalDouble.of(number.get()) : OptionalDouble.empty();
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
        String expected = "a whole number" + between(least, most);
        Optional<Double> number = optional(key, Double.class, expected);
        if (number.isEmpty()) {
            return OptionalInt.empty();
        }
        double value = number.get();
        if (value == Math.rint(value) && value >= least && value <= most) {
            return OptionalInt.of((int) value);
        }
        throw refuse(key, expected);
    }

    public boolean flag(String key) {
        return required(optionalFlag(key), key, "true or false");
    }

    public Optional<Boolean> optionalFlag(String key) {
        return optional(key, Boolean.class, "true or false");
    }

    public JsonObject object(String key) {
        return required(optionalObject(key), key, "an object { … }");
    }

    public Optional<JsonObject> optionalObject(String key) {
        return optional(key, Map.class, "an object { … }").isEmpty()
                ? Optional.empty()
                : Optional.of(new JsonObject(source, fullName(key), present(key)));
    }

    private <T> Optional<T> optional(String key, Class<T> kind, String expected) {
        JsonValue value = present(key);
        if (value != null && !kind.isInstance(value.value())) {
            throw refuse(key, expected);
        }
        return value == null ? Optional.empty() : Optional.of(kind.cast(value.value()));
    }

    private <T> T required(Optional<T> value, String key, String expected) {
        if (value.isEmpty()) {
            throw refuse(key, expected);
        }
        return value.get();
    }

    /** A list of objects; empty where the key is absent. */
    public List<JsonObject> objects(String key) {
        List<JsonObject> all = new ArrayList<>();
        for (JsonValue item : items(key, Map.class, "a list of objects", "an object { … }")) {
            all.add(new JsonObject(source, itemName(key, all.size()), item));
        }
        return all;
    }

    /** A list of texts; empty where the key is absent. */
    public List<String> texts(String key) {
        List<String> all = new ArrayList<>();
        for (JsonValue item : items(key, String.class, "a list of texts", "a text in quotes")) {
            all.add((String) item.value());
        }
        return all;
    }

    /** A list of numbers; empty where the key is absent. */
    public List<Double> numbers(String key) {
        List<Double> all = new ArrayList<>();
        for (JsonValue item : items(key, Double.class, "a list of numbers", "a number")) {
            all.add((Double) item.value());
        }
        return all;
    }

    /** The whole object in the form that {@link JsonWriter} takes, to be copied as it is. */
    public Map<String, Object> plain() {
        @SuppressWarnings("unchecked") // JsonValue.plain makes exactly this map
        Map<String, Object> all = (Map<String, Object>) object.plain();
        return all;
    }

    private List<JsonValue> items(String key, Class<?> kind, String expected, String expectedItem) {
        List<JsonValue> all = new ArrayList<>();
        List<?> items = optional(key, List.class, expected).orElse(List.of());
        for (Object each : items) {
            JsonValue item = (JsonValue) each;
            if (!kind.isInstance(item.value())) {
                throw source.line(item.line())
                        .found("\"" + itemName(key, all.size()) + "\" is " + item.described(), expectedItem);
            }
            all.add(item);
        }
        return all;
    }

    /** The value of a key; null inside this class only, where there is none or the document says null. */
    private JsonValue present(String key) {
        JsonValue value = object.fields().get(key);
        return value == null || value.value() instanceof Optional ? null : value;
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
