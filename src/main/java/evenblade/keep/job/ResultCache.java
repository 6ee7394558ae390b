package evenblade.keep.job;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Optional;

/**
 * Results kept beside the raw files so that they needn't be computed twice. Nothing in it is evidence:
 * it may be deleted at any time, and where it can't be written or read the result is computed again.
 *
 * <p>A result is found by everything it depends on: hash of the recording, options, version of the
 * program. So it never goes stale. It is sealed with a key of this user on this machine: a result that came with a folder
 * from elsewhere, or that was changed, counts as not there.
 */
public final class ResultCache {
    static final String FOLDER = "cache";
    private static final int SEAL_BYTES = MachineKey.BYTES;

    /** Far above any result kept here, far below what memory holds. */
    private static final long MOST_BYTES = 64L << 20;

    private final Path job;
    private final Path folder;
    private final MachineKey key;

    ResultCache(Path job, MachineKey key) {
        this.job = job;
        this.folder = job.resolve(FOLDER);
        this.key = key;
    }

    /**
     * A result kept earlier.
     *
     * @param dependsOn everything it depends on, in a fixed order
     * @return the bytes given to {@link #put}; empty where there are none, or none that were kept here and not changed since
     */
    public Optional<byte[]> get(String dependsOn) {
        Path file = file(dependsOn);
        if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS) || !InsideFolder.holds(job, folder)) {
            return Optional.empty();
        }
        try {
            if (Files.size(file) > MOST_BYTES) {
                return Optional.empty();
            }
            byte[] stored = Files.readAllBytes(file);
            if (stored.length < SEAL_BYTES) {
                return Optional.empty();
            }
            byte[] content = Arrays.copyOfRange(stored, SEAL_BYTES, stored.length);
            byte[] seal = Arrays.copyOf(stored, SEAL_BYTES);
            return MessageDigest.isEqual(seal, sealOf(dependsOn, content)) ? Optional.of(content) : Optional.empty();
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    /** Keeps a result, if the folder lets it. */
    public void put(String dependsOn, byte[] content) {
        if (content.length > MOST_BYTES - SEAL_BYTES || !InsideFolder.holds(job, folder)) {
            return;
        }
        Path target = file(dependsOn);
        Path unfinished = Unfinished.in(folder, target.getFileName().toString());
        try {
            Files.createDirectories(folder);
            byte[] stored = Arrays.copyOf(sealOf(dependsOn, content), SEAL_BYTES + content.length);
            System.arraycopy(content, 0, stored, SEAL_BYTES, content.length);
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

    /** Over the question too, so that one result can't stand in for another. */
    private byte[] sealOf(String dependsOn, byte[] content) {
        byte[] question = sha256(dependsOn.getBytes(StandardCharsets.UTF_8));
        byte[] both = Arrays.copyOf(question, question.length + content.length);
        System.arraycopy(content, 0, both, question.length, content.length);
        return key.seal(both);
    }

    private static byte[] sha256(byte[] bytes) {
        return RealDisk.sha256().digest(bytes);
    }
}
