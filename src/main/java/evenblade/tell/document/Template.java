package evenblade.tell.document;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A phrase with slots for values. {@code {0}} shows the first value in the usual way; {@code {0:2}} with two decimals;
 * {@code {0:+1}} with its sign; {@code {0:g4}} with four figures; {@code {0:t}} a time with three figures in s, ms or µs;
 * {@code {0:b}} a length in both units; a minus at the end, {@code {0:2-}}, leaves its unit away. Several things are joined by commas; by "and" in
 * {@code {0 and}}, by semicolons in {@code {0;}}. {@code {0|is|are}} shows one word or the other, whether there
 * is one of it or not.
 *
 * @param parts in reading order
 */
record Template(List<Part> parts) {
    private static final Pattern SLOT =
            Pattern.compile("('?)\\{(\\d)(?::(?<sign>\\+)?(?<form>g?\\d|[bt])?(?<bare>-)?)?(?<join> and| or|;)?"
                    + "(?:\\|(?<one>[^|{}]*)\\|(?<other>[^|{}]*))?}(?<end>'?)");

    /** Own words, or a slot. */
    sealed interface Part permits Words, Slot, Choice {}

    record Words(String text) implements Part {}

    /**
     * Shows a value.
     *
     * @param index of the value
     * @param quoted whether quotation marks stand round it
     * @param join what stands between several
     */
    record Slot(int index, boolean signed, Optional<String> form, boolean bare, boolean quoted, String join)
            implements Part {}

    /** Chooses a word by how many there are. */
    record Choice(int index, String one, String other) implements Part {}

    Template {
        parts = List.copyOf(parts);
    }

    /** Which values it shows. */
    Set<Integer> indices() {
        Set<Integer> indices = new TreeSet<>();
        for (Part part : parts) {
            if (part instanceof Slot slot) {
                indices.add(slot.index());
            } else if (part instanceof Choice choice) {
                indices.add(choice.index());
            }
        }
        return indices;
    }

    static Template parse(String text) {
        List<Part> parts = new ArrayList<>();
        Matcher slots = SLOT.matcher(text);
        int from = 0;
        while (slots.find()) {
            boolean quoted = !slots.group(1).isEmpty() && !slots.group("end").isEmpty();
            int start = quoted ? slots.start() : slots.start() + slots.group(1).length();
            int end = quoted ? slots.end() : slots.end() - slots.group("end").length();
            words(parts, text.substring(from, start));
            int index = Integer.parseInt(slots.group(2));
            parts.add(
                    slots.group("one") == null
                            ? new Slot(
                                    index,
                                    slots.group("sign") != null,
                                    Optional.ofNullable(slots.group("form")),
                                    slots.group("bare") != null,
                                    quoted,
                                    Optional.ofNullable(slots.group("join"))
                                            .map(join -> join + " ")
                                            .orElse(", "))
                            : new Choice(index, slots.group("one"), slots.group("other")));
            from = end;
        }
        words(parts, text.substring(from));
        return new Template(parts);
    }

    private static void words(List<Part> parts, String text) {
        if (text.indexOf('{') >= 0) {
            throw new IllegalArgumentException("a slot that can't be read in \"" + text + "\"");
        }
        if (!text.isEmpty()) {
            parts.add(new Words(text));
        }
    }
}
