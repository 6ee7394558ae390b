package evenblade.input.recording;

import evenblade.base.problem.BadInput;
import evenblade.base.problem.Nearest;
import java.util.List;

/** Finds a channel by what the user calls it: its name, or its number counted from 1. */
public final class ChannelChoice {
    private ChannelChoice() {}

    /**
     * The index, counted from 0, of the channel meant: the name as written, else the name without
     * regard to capitals, else the number.
     *
     * @param names of the file's channels, in order
     * @param wanted name or number
     * @param place what to complain about
     * @throws BadInput naming the channels there are, and the nearest
     */
    public static int indexOf(List<String> names, String wanted, BadInput.Place place) {
        String word = wanted.strip();
        if (names.contains(word)) {
            return names.indexOf(word);
        }
        for (int i = 0; i < names.size(); i++) {
            if (names.get(i).equalsIgnoreCase(word)) {
                return i;
            }
        }
        if (word.matches("\\d{1,6}")) {
            int number = Integer.parseInt(word);
            if (number >= 1 && number <= names.size()) {
                return number - 1;
            }
            throw place.found("channel number " + number, "1 to " + names.size() + " (" + listed(names) + ")");
        }
        String nearest = Nearest.alike(word, names)
                .map(name -> "; did you mean '" + name + "'?")
                .orElse("");
        throw place.found(
                "no channel '" + word + "'",
                (names.size() == 1 ? "" : "one of ") + listed(names) + " or a number" + nearest);
    }

    private static String listed(List<String> names) {
        return "'" + String.join("', '", names) + "'";
    }
}
