package evenblade.input.intake;

import evenblade.input.recording.FileHash;
import java.io.Closeable;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * Reads a file once from front to back. A thread reads ahead, another one computes the SHA-256 of the same bytes; the hash may
 * fall behind by {@link #MOST_CHUNKS}, so that who works on the bytes needn't wait for it.
 */
final class HashedFile extends InputStream implements Closeable {
    private static final int CHUNK_BYTES = 1 << 18; // ours: 256 KiB
    /** At most 32 MiB, some minutes of sound, and at most a sixteenth of the memory; ours. */
    private static final int MOST_CHUNKS =
            (int) Math.max(6, Math.min(128, Runtime.getRuntime().maxMemory() / 16 / CHUNK_BYTES));

    /** Bytes on their way from the reading thread, or the end, or the failure that ended it. */
    private record Chunk(byte[] bytes, int length, IOException failure, AtomicInteger users) {
        Chunk(byte[] bytes, int length) {
            this(bytes, length, null, new AtomicInteger(2));
        }

        /** Where nothing comes any more. */
        static Chunk end(IOException failure) {
            return new Chunk(new byte[0], 0, failure, new AtomicInteger());
        }
    }

    private final BlockingQueue<Chunk> filled = new LinkedBlockingQueue<>();
    private final BlockingQueue<Chunk> unhashed = new LinkedBlockingQueue<>();
    private final BlockingQueue<byte[]> free = new LinkedBlockingQueue<>();
    private final CompletableFuture<String> hash = new CompletableFuture<>();
    private final InputStream file;
    private final Thread reader = new Thread(this::readAll, "file reader");
    private final Thread hasher = new Thread(this::hashAll, "file hash");
    private Chunk current = Chunk.end(null);
    private int position;

    HashedFile(Path path) throws IOException {
        file = Files.newInputStream(path);
        for (Thread thread : List.of(reader, hasher)) {
            thread.setDaemon(true);
            thread.start();
        }
    }

    static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    private void readAll() {
        try {
            int made = 0;
            while (true) {
                byte[] bytes = free.poll();
                if (bytes == null) {
                    bytes = made++ < MOST_CHUNKS ? new byte[CHUNK_BYTES] : free.take();
                }
                int length = file.readNBytes(bytes, 0, bytes.length);
                if (length > 0) {
                    Chunk chunk = new Chunk(bytes, length);
                    unhashed.add(chunk);
                    filled.add(chunk);
                }
                if (length < bytes.length) {
                    unhashed.add(Chunk.end(null));
                    filled.add(Chunk.end(null));
                    return;
                }
            }
        } catch (IOException e) {
            filled.add(Chunk.end(e));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void hashAll() {
        try {
            MessageDigest digest = sha256();
            for (Chunk chunk = unhashed.take(); chunk.length() > 0; chunk = unhashed.take()) {
                digest.update(chunk.bytes(), 0, chunk.length());
                done(chunk);
            }
            hash.complete(HexFormat.of().formatHex(digest.digest()));
        } catch (InterruptedException e) {
            hash.completeExceptionally(e);
        }
    }

    private void done(Chunk chunk) {
        if (chunk.users().decrementAndGet() == 0) {
            free.add(chunk.bytes());
        }
    }

    /** Makes sure the current chunk has a byte left; false at the end of the file. */
    private boolean more() throws IOException {
        while (position == current.length()) {
            if (current.length() > 0) {
                done(current);
            }
            try {
                current = filled.take();
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw new IOException("interrupted while reading", e);
            }
            position = 0;
            if (current.failure() != null) {
                filled.add(current);
                throw current.failure();
            }
            if (current.length() == 0) {
                filled.add(current);
                return false;
            }
        }
        return true;
    }

    @Override
    public int read() throws IOException {
        return more() ? current.bytes()[position++] & 0xff : -1;
    }

    @Override
    public int read(byte[] into, int offset, int length) throws IOException {
        if (length == 0) {
            return 0;
        }
        if (!more()) {
            return -1;
        }
        int count = Math.min(length, current.length() - position);
        System.arraycopy(current.bytes(), position, into, offset, count);
        position += count;
        return count;
    }

    @Override
    public long skip(long bytes) throws IOException {
        long left = bytes;
        while (left > 0 && more()) {
            int count = (int) Math.min(left, current.length() - position);
            position += count;
            left -= count;
        }
        return bytes - left;
    }

    /** Skips exactly so many bytes. */
    void skipTo(long bytes) throws IOException {
        if (skip(bytes) < bytes) {
            throw new EOFException("the file has become shorter while it was read");
        }
    }

    /** Reads what is left. The SHA-256 of the whole file may come later, after this is closed. */
    FileHash hashOfAll() throws IOException {
        skip(Long.MAX_VALUE);
        join(reader);
        return FileHash.coming(hash);
    }

    private static void join(Thread thread) throws IOException {
        try {
            thread.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted while reading", e);
        }
    }

    /** Stops reading; the hash is given up where the file wasn't read to its end. */
    @Override
    public void close() throws IOException {
        if (reader.isAlive() || current.failure() != null) {
            reader.interrupt();
            hasher.interrupt();
        }
        join(reader);
        file.close();
    }
}
