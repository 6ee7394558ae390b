package evenblade.keep.job;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;

/** A disk that fails at a chosen step, the way disks and power do. */
final class FaultyDisk implements Disk {
    private final Disk real = new RealDisk();
    private final Fault fault;
    private final int failingStep;
    private int steps;

    /** How a step fails. */
    enum Fault {
        /** The power goes before anything happens. */
        CRASH_BEFORE,
        /** The power goes when half of the bytes are written. */
        CRASH_HALFWAY,
        /** The power goes when the step is done. */
        CRASH_AFTER,
        /** There is room for half of the bytes. */
        FULL,
        /** The step is not allowed. */
        FORBIDDEN
    }

    /** The power goes: no code of the program runs any more. */
    static final class Crash extends Error {
        private static final long serialVersionUID = 1;
    }

    FaultyDisk(Fault fault, int failingStep) {
        this.fault = fault;
        this.failingStep = failingStep;
    }

    int stepsTaken() {
        return steps;
    }

    private interface Step {
        void run() throws IOException;
    }

    private void step(Path file, Step whole, Step half) throws IOException {
        if (steps++ != failingStep) {
            whole.run();
            return;
        }
        switch (fault) {
            case CRASH_BEFORE -> throw new Crash();
            case CRASH_HALFWAY -> {
                half.run();
                throw new Crash();
            }
            case CRASH_AFTER -> {
                whole.run();
                throw new Crash();
            }
            case FULL -> {
                half.run();
                throw new FileSystemException(file.toString(), null, "No space left on device");
            }
            case FORBIDDEN -> throw new AccessDeniedException(file.toString());
        }
    }

    @Override
    public void makeFolder(Path folder) throws IOException {
        step(folder, () -> real.makeFolder(folder), () -> {});
    }

    @Override
    public void write(Path file, byte[] bytes) throws IOException {
        step(file, () -> real.write(file, bytes), () -> Files.write(file, Arrays.copyOf(bytes, bytes.length / 2)));
    }

    @Override
    public FileStamp copy(Path from, Path to) throws IOException {
        AtomicReference<FileStamp> stamp = new AtomicReference<>();
        step(to, () -> stamp.set(real.copy(from, to)), () -> {
            byte[] bytes = Files.readAllBytes(from);
            Files.write(to, Arrays.copyOf(bytes, bytes.length / 2));
        });
        return stamp.get();
    }

    @Override
    public void rename(Path from, Path to) throws IOException {
        step(to, () -> real.rename(from, to), () -> {});
    }

    @Override
    public void syncFolder(Path folder) throws IOException {
        step(folder, () -> real.syncFolder(folder), () -> {});
    }

    @Override
    public void delete(Path file) throws IOException {
        real.delete(file);
    }

    @Override
    public List<Path> list(Path folder) throws IOException {
        return real.list(folder);
    }

    @Override
    public long freeBytes(Path folder) throws IOException {
        return real.freeBytes(folder);
    }
}
