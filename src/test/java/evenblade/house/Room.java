package evenblade.house;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One package of the program, as DEVELOPERS.md describes it.
 *
 * @param name the package below {@code evenblade}
 * @param purpose one sentence
 * @param mayUse names of the rooms it may use
 */
record Room(String name, String purpose, Set<String> mayUse) {
    private static final Pattern QUOTED = Pattern.compile("`([a-z]+)`");

    Room {
        mayUse = Set.copyOf(mayUse);
    }

    /** The rooms in the order of the table. */
    static List<Room> all() {
        return MarkdownTable.read(Path.of("DEVELOPERS.md"), "room").stream()
                .map(row ->
                        new Room(row.get("room").replace("`", ""), row.get("purpose"), quotedWords(row.get("may use"))))
                .toList();
    }

    static Set<String> quotedWords(String text) {
        Set<String> words = new TreeSet<>();
        Matcher matcher = QUOTED.matcher(text);
        while (matcher.find()) {
            words.add(matcher.group(1));
        }
        return words;
    }
}
