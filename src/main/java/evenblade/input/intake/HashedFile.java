package evenblade.input.intake;

import java.io.Closeable;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;

/**
 * Reads a file once from front to back, with its SHA-256 computed on the same bytes by the reading
 * thread while the caller works on them.
 */
final class HashedFile extends InputStream implements Closeable {
    private static final int CHUNK_BYTES = 1 << 18; // ours: 256 KiB
    private static final int CHUNKS = 6; // enough for the hash to run beside the reading

    /** Bytes on their way from the reading thread, or the end, or the failure that ended it. */
    private record Chunk(byte[] bytes, int length, IOException failure) {}

    private final BlockingQueue<Chunk> filled = new ArrayBlockingQueue<>(CHUNKS + 1);
    private final BlockingQueue<byte[]> free = new ArrayBlockingQueue<>(CHUNKS);
    private final MessageDigest digest = sha256();
    private final InputStream file;
    private final Thread reader;
    private Chunk current = new Chunk(new byte[0], 0, null);
    private int position;

    HashedFile(Path path) throws IOException {
        file = Files.newInputStream(path);
        for (int i = 0; i < CHUNKS; i++) {
            free.add(new byte[CHUNK_BYTES]);
        }
        reader = new Thread(this::readAll, "file reader");
        reader.setDaemon(true);
        reader.start();
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
            while (true) {
                byte[] bytes = free.take();
                int length;
                try {
                    length = file.readNBytes(bytes, 0, bytes.length);
                } catch (IOException e) {
                    filled.put(new Chunk(bytes, 0, e));
                    return;
                }
                // Handed over before it is hashed: both sides only read it, and it comes back to this
                // thread, which is past hashing it by then.
                if (length > 0) {
                    filled.put(new Chunk(bytes, length, null));
                    digest.update(bytes, 0, length);
                }
                if (length < bytes.length) {
                    filled.put(new Chunk(bytes, 0, null));
                    return;
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Makes sure the current chunk has a byte left; false at the end of the file. */
    private boolean more() throws IOException {
        while (position == current.length()) {
            if (current.length() > 0) {
                free.add(current.bytes());
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

    /** Reads what is left and returns the SHA-256 of the whole file in lower-case hexadecimal. */
    String sha256OfAll() throws IOException {
        skip(Long.MAX_VALUE);
        try {
            reader.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted while reading", e);
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    @Override
    public void close() throws IOException {
        reader.interrupt();
        try {
            reader.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        file.close();
    }
}
