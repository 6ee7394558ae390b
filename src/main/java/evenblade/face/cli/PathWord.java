package evenblade.face.cli;

import evenblade.base.problem.BadInput;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;

/** A word of the command line that names a file or folder. */
final class PathWord {
    private PathWord() {}

    /**
     * The path.
     *
     * @throws BadInput where this system has no such names
     */
    static Path of(String word) {
        try {
            return Path.of(word);
        } catch (InvalidPathException e) {
            throw notAName(word);
        }
    }

    static BadInput notAName(String word) {
        return BadInput.in("file name '" + word + "'")
                .found(
                        "a character that file names can't have here",
                        "another name, or a terminal whose locale is UTF-8 (such as LC_ALL=C.UTF-8)");
    }
}
