package evenblade.base.problem;

import java.nio.file.Files;
import java.nio.file.Path;

/** What can be read from front to back and then ends: no folder, and no pipe or device, which would keep a reader waiting. */
public final class PlainFile {
    private PlainFile() {}

    /**
     * Refuses what is something else. One that is there but out of reach passes: opening it tells why.
     *
     * @param expected a phrase for what should lie there
     * @throws BadInput where it is missing or no plain file
     */
    public static void require(Path file, String expected) {
        if (Files.notExists(file)) {
            throw BadInput.in(file).found("no such file", expected);
        }
        if (Files.isDirectory(file)) {
            throw BadInput.in(file).found("a folder", expected);
        }
        if (Files.exists(file) && !Files.isRegularFile(file)) {
            throw BadInput.in(file).found("a pipe or a device", expected);
        }
    }
}
