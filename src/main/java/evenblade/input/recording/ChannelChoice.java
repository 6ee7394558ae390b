package evenblade.input.recording;

import evenblade.base.problem.BadInput;
import evenblade.base.problem.Nearest;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** Finds a channel by what the user calls it: its name, its whole heading, or its number. */
public final class ChannelChoice {
    private ChannelChoice() {}

    /**
     * The index, counted from 0, of the channel meant: the name or heading as written, else without regard to
     * capitals, else the number.
     *
     * @param labels of the file's channels, in order
     * @param wanted name, heading or number
     * @param place what to complain about
     * @throws BadInput naming the channels there are, and the nearest
     */
    public static int among(List<ChannelLabel> labels, String wanted, BadInput.Place place) {
        String word = wanted.strip();
        List<Predicate<ChannelLabel>> ways = List.of(
                label -> label.name().equals(word),
                label -> label.heading().equals(word),
                label -> label.name().equalsIgnoreCase(word) || label.heading().equalsIgnoreCase(word),
                label -> String.valueOf(label.number()).equals(word));
        for (Predicate<ChannelLabel> way : ways) {
            for (int i = 0; i < labels.size(); i++) {
                if (way.test(labels.get(i))) {
                    return i;
                }
            }
        }
        List<String> names = labels.stream().map(ChannelLabel::name).toList();
        if (word.matches("\\d{1,6}")) {
            throw place.found("channel number " + word, numbers(labels) + " (" + listed(names) + ")");
        }
        String nearest = Nearest.alike(word, names)
                .map(name -> "; did you mean '" + name + "'?")
                .orElse("");
        throw place.found(
                "no channel '" + word + "'",
                (names.size() == 1 ? "" : "one of ") + listed(names) + " or a number" + nearest);
    }

    /** The place of a channel among names that are counted from 1. */
    public static int indexOf(List<String> names, String wanted, BadInput.Place place) {
        return among(ChannelLabel.counted(names), wanted, place);
    }

    private static String numbers(List<ChannelLabel> labels) {
        int first = labels.get(0).number();
        int last = labels.get(labels.size() - 1).number();
        return last - first == labels.size() - 1
                ? first + " to " + last
                : labels.stream().map(label -> String.valueOf(label.number())).collect(Collectors.joining(", "));
    }

    private static String listed(List<String> names) {
        return "'" + String.join("', '", names) + "'";
    }
}
