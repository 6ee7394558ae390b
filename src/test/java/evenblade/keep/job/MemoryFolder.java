package evenblade.keep.job;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.extension.AnnotatedElementContext;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.io.TempDirFactory;

/** Temporary folders in memory where the machine has them: syncing costs nothing there. */
public final class MemoryFolder implements TempDirFactory {
    @Override
    public Path createTempDirectory(AnnotatedElementContext element, ExtensionContext context) throws Exception {
        Path memory = Path.of("/dev/shm");
        return Files.isWritable(memory)
                ? Files.createTempDirectory(memory, "evenblade-job")
                : Files.createTempDirectory("evenblade-job");
    }
}
