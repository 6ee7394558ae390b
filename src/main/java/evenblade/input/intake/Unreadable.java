package evenblade.input.intake;

import evenblade.base.problem.BadInput;
import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** Turns a failure to read a file into words for its user. */
final class Unreadable {
    private Unreadable() {}

    static BadInput because(Path file, IOException e) {
        String found;
        if (e instanceof NoSuchFileException) {
            found = "no such file";
        } else if (e instanceof AccessDeniedException) {
            found = "no permission to read it";
        } else {
            found = "it can't be read" + (e.getMessage() == null ? "" : " (" + e.getMessage() + ")");
        }
        return BadInput.in(file).found(found, "a file that can be read");
    }
}
