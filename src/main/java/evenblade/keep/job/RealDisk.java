package evenblade.keep.job;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileTime;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.temporal.ChronoUnit;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;

/** The disk as it is. */
final class RealDisk implements Disk {
    private static final int CHUNK = 1 << 16; // ours: 64 KiB

    @Override
    public void makeFolder(Path folder) throws IOException {
        Files.createDirectories(folder);
    }

    @Override
    public void write(Path file, byte[] bytes) throws IOException {
        try (FileChannel channel = create(file)) {
            writeAll(channel, ByteBuffer.wrap(bytes));
            channel.force(true);
        }
    }

    @Override
    public FileStamp copy(Path from, Path to) throws IOException {
        FileTime time = Files.getLastModifiedTime(from);
        try (FileChannel out = create(to)) {
            FileStamp stamp = read(from, time, chunk -> writeAll(out, chunk));
            Files.setLastModifiedTime(to, time);
            out.force(true);
            return stamp;
        }
    }

    @Override
    public void rename(Path from, Path to) throws IOException {
        try {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException e) {
            throw new IOException("this disk can't give a file its name in one step", e);
        }
    }

    @Override
    public void syncFolder(Path folder) throws IOException {
        // Windows opens no channel on a folder and writes names through by itself.
        if (!FileSystems.getDefault().supportedFileAttributeViews().contains("posix")) {
            return;
        }
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        }
    }

    @Override
    public void delete(Path file) throws IOException {
        Files.deleteIfExists(file);
    }

    @Override
    public List<Path> list(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.sorted().toList();
        } catch (NoSuchFileException | NotDirectoryException e) {
            return List.of();
        }
    }

    @Override
    public long freeBytes(Path folder) throws IOException {
        return Files.getFileStore(folder).getUsableSpace();
    }

    /** Reads a whole file for its stamp. */
    static FileStamp stamp(Path file) throws IOException {
        return read(file, Files.getLastModifiedTime(file), chunk -> {});
    }

    private static FileStamp read(Path file, FileTime time, ChunkSink sink) throws IOException {
        MessageDigest digest = sha256();
        long bytes = 0;
        try (InputStream in = Files.newInputStream(file)) {
            byte[] chunk = new byte[CHUNK];
            for (int n = in.read(chunk); n >= 0; n = in.read(chunk)) {
                digest.update(chunk, 0, n);
                sink.accept(ByteBuffer.wrap(chunk, 0, n));
                bytes += n;
            }
        }
        return new FileStamp(
                HexFormat.of().formatHex(digest.digest()),
                bytes,
                time.toInstant().truncatedTo(ChronoUnit.MILLIS));
    }

    /** Takes the next bytes of a file. */
    private interface ChunkSink {
        void accept(ByteBuffer chunk) throws IOException;
    }

    private static FileChannel create(Path file) throws IOException {
        return FileChannel.open(file, StandardOpenOption.WRITE, StandardOpenOption.CREATE_NEW);
    }

    private static void writeAll(FileChannel channel, ByteBuffer buffer) throws IOException {
        while (buffer.hasRemaining()) {
            channel.write(buffer);
        }
    }

    static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
