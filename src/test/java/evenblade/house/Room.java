package evenblade.house;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * One package of the program, as DEVELOPERS.md describes it.
 *
 * @param storey the package below {@code evenblade} that the room is in
 * @param name the package below its storey; no two rooms share one
 * @param purpose one sentence
 * @param mayUse names of the rooms it may use
 */
record Room(String storey, String name, String purpose, Set<String> mayUse) {
    private static final Pattern IMPORT = Pattern.compile("^import (?:static )?evenblade\\.\\w+\\.(\\w+)\\.");
    private static final Pattern QUOTED = Pattern.compile("`([a-z]+)`");

    Room {
        mayUse = Set.copyOf(mayUse);
    }

    /** The package with all below it, as rules name it. */
    String packages() {
        return "evenblade." + storey + "." + name + "..";
    }

    /** Where its sources are. */
    Path folder() {
        return Path.of("src/main/java/evenblade", storey, name);
    }

    /** Names of rooms that its sources import from; a constant that the compiler copies leaves no other trace. */
    Set<String> imports() {
        Set<String> rooms = new TreeSet<>();
        try (Stream<Path> files = Files.list(folder())) {
            files.flatMap(file -> MarkdownTable.lines(file).stream()).forEach(line -> {
                Matcher matcher = IMPORT.matcher(line);
                if (matcher.find()) {
                    rooms.add(matcher.group(1));
                }
            });
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return rooms;
    }

    /** The rooms in the order of the table. */
    static List<Room> all() {
        return MarkdownTable.read(Path.of("DEVELOPERS.md"), "storey").stream()
                .map(row -> new Room(
                        row.get("storey").replace("`", ""),
                        row.get("room").replace("`", ""),
                        row.get("purpose"),
                        quotedWords(row.get("may use"))))
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
