package evenblade.face.app;

import evenblade.base.problem.BadInput;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

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
            requireInside(target.getParent());
            Files.createDirectories(target.getParent());
            Files.deleteIfExists(unfinished);
            try (OutputStream out = new BufferedOutputStream(
                    Files.newOutputStream(unfinished, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE))) {
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

    /** The folder may be a job that came from somebody: a link in it must not carry what is written elsewhere. */
    private void requireInside(Path parent) throws IOException {
        Path there = parent;
        while (!Files.exists(there, LinkOption.NOFOLLOW_LINKS)) {
            there = there.getParent();
        }
        if (!there.toRealPath().startsWith(folder.toRealPath())) {
            throw BadInput.in(there).found("a link that leads out of the folder", "a folder in it");
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
