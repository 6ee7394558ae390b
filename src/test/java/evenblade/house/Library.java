package evenblade.house;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;

/**
 * One library that is packed into the program, as docs/licences.md lists it.
 *
 * @param name group and artifact, with a colon between
 * @param packagePrefix its classes are in this package and below; empty if the program may not use it directly
 * @param rooms the rooms that may use it
 */
record Library(String name, String version, String packagePrefix, Set<String> rooms) {
    Library {
        rooms = Set.copyOf(rooms);
    }

    static List<Library> all() {
        return MarkdownTable.read(Path.of("docs/licences.md"), "library").stream()
                .map(row -> new Library(
                        row.get("library").replace("`", ""),
                        row.get("version"),
                        row.get("package").replace("`", ""),
                        Room.quotedWords(row.get("room"))))
                .toList();
    }
}
