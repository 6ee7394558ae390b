package evenblade.input.capture;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** Brings the names in a folder to the disk: a new file whose name isn't there is lost with the power. */
public final class FolderNames {
    private FolderNames() {}

    /** Returns once the name of a new file or folder is on the disk. */
    public static void settle(Path made) throws IOException {
        // Windows opens no channel on a folder and writes names through by itself.
        if (!FileSystems.getDefault().supportedFileAttributeViews().contains("posix")) {
            return;
        }
        try (FileChannel channel = FileChannel.open(made.toAbsolutePath().getParent(), StandardOpenOption.READ)) {
            channel.force(true);
        }
    }

    /** Fails where a file that is being written was removed: what is written then is nowhere. */
    static void requireThere(Path file) throws IOException {
        if (!Files.exists(file)) {
            throw new IOException("the file was removed");
        }
    }
}
