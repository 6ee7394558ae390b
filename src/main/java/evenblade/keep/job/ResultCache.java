package evenblade.keep.job;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.Optional;

/**
 * Results kept beside the raw files so that they needn't be computed twice. Nothing in it is evidence:
 * it may be deleted at any time, and where it can't be written or read the result is computed again.
 *
 * <p>A result is found by everything it depends on: hash of the recording, options, version of the
 * program. So it never goes stale.
 */
public final class ResultCache {
    static final String FOLDER = "cache";
    private static final int HASH_BYTES = 32;

    private final Path folder;

    ResultCache(Path folder) {
        this.folder = folder;
    }

    /**
     * A result kept earlier.
     *
     * @param dependsOn everything it depends on, in a fixed order
     * @return the bytes given to {@link #put}; empty where there are none or they were damaged
     */
    public Optional<byte[]> get(String dependsOn) {
        try {
            byte[] stored = Files.readAllBytes(file(dependsOn));
            if (stored.length < HASH_BYTES) {
                return Optional.empty();
            }
            byte[] content = new byte[stored.length - HASH_BYTES];
            System.arraycopy(stored, HASH_BYTES, content, 0, content.length);
            byte[] hash = new byte[HASH_BYTES];
            System.arraycopy(stored, 0, hash, 0, HASH_BYTES);
            return MessageDigest.isEqual(hash, sha256(content)) ? Optional.of(content) : Optional.empty();
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    /** Keeps a result, if the folder lets it. */
    public void put(String dependsOn, byte[] content) {
        Path target = file(dependsOn);
        Path unfinished = Unfinished.in(folder, target.getFileName().toString());
        try {
            Files.createDirectories(folder);
            byte[] stored = new byte[HASH_BYTES + content.length];
            System.arraycopy(sha256(content), 0, stored, 0, HASH_BYTES);
            System.arraycopy(content, 0, stored, HASH_BYTES, content.length);
            Files.write(unfinished, stored);
            Files.move(unfinished, target, StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException e) {
            giveUp(unfinished);
        }
    }

    private static void giveUp(Path unfinished) {
        try {
            Files.deleteIfExists(unfinished);
        } catch (IOException e) {
            // It stays as an unfinished file, which nobody reads.
        }
    }

    private Path file(String dependsOn) {
        return folder.resolve(HexFormat.of().formatHex(sha256(dependsOn.getBytes(StandardCharsets.UTF_8))) + ".result");
    }

    private static byte[] sha256(byte[] bytes) {
        return RealDisk.sha256().digest(bytes);
    }
}
