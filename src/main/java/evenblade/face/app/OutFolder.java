package evenblade.face.app;

import evenblade.base.problem.BadInput;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** A folder that files are put into whole: each appears when it is complete, or not at all. */
final class OutFolder {
    private final Path folder;

    /**
     * Makes the folder where it isn't there yet.
     *
     * @throws BadInput where it can't be one, or can't be written to
     */
    OutFolder(Path folder) {
        this.folder = folder;
        try {
            Files.createDirectories(folder);
            Files.delete(Files.createTempFile(folder, ".evenblade", ".try"));
        } catch (IOException e) {
            throw refusal(e);
        }
    }

    /** Writes what a file holds. */
    interface Content {
        void writeTo(OutputStream out) throws IOException;
    }

    /**
     * Writes one file; an earlier one of that name is replaced when the new one is complete.
     *
     * @param name below the folder, parted by {@code /}
     * @throws BadInput where the disk doesn't take it; the earlier file is then as it was
     */
    Path put(String name, Content content) {
        Path target = folder.resolve(name);
        Path unfinished = target.resolveSibling("." + target.getFileName() + ".unfinished");
        try {
            Files.createDirectories(target.getParent());
            try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(unfinished))) {
                content.writeTo(out);
            }
            Files.move(unfinished, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            return target;
        } catch (IOException e) {
            throw refusal(e);
        } finally {
            giveUp(unfinished);
        }
    }

    /** Writes one file of text. */
    Path put(String name, String text) {
        return put(name, out -> out.write(text.getBytes(StandardCharsets.UTF_8)));
    }

    private BadInput refusal(IOException e) {
        return BadInput.in(folder)
                .found("it can't be written (" + why(e) + ")", "a folder to write into; choose another");
    }

    private static String why(IOException e) {
        return e instanceof AccessDeniedException ? "permission denied" : e.getMessage();
    }

    private static void giveUp(Path unfinished) {
        try {
            Files.deleteIfExists(unfinished);
        } catch (IOException e) {
            // It stays under a name that nobody takes for a report.
        }
    }
}
