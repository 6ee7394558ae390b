package evenblade.keep.job;

import evenblade.base.problem.BadInput;
import evenblade.base.problem.PlainFile;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** Looks at a photo or paper before it is taken in. */
final class AttachedFiles {
    private AttachedFiles() {}

    /**
     * What a file is.
     *
     * @throws BadInput where it isn't what its name says, is empty or can't be read
     */
    static FileNature natureOf(Path file) {
        PlainFile.require(file, "a photo or paper");
        FileNature found;
        try (InputStream in = Files.newInputStream(file)) {
            byte[] start = in.readNBytes(FileNature.BYTES_NEEDED);
            if (start.length == 0) {
                throw BadInput.in(file).found("an empty file", "a photo or paper");
            }
            found = FileNature.of(start);
        } catch (IOException e) {
            throw DiskTrouble.reading(file, e);
        }
        Optional<FileNature> promised = FileNature.promisedBy(file.getFileName().toString());
        if (promised.isPresent() && promised.get() != found) {
            throw BadInput.in(file)
                    .atByte(0)
                    .found("by its content " + found.display(), promised.get().display() + " as its name says");
        }
        return found;
    }
}
