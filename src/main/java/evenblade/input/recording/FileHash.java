package evenblade.input.recording;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;

/** SHA-256 of a file's bytes. It may still be on its way while the recording is analysed: who asks for it waits. */
public final class FileHash {
    private final CompletableFuture<String> hex;

    private FileHash(CompletableFuture<String> hex) {
        this.hex = hex;
    }

    /** A hash that is known, in lower-case hexadecimal. */
    public static FileHash of(String hex) {
        return new FileHash(CompletableFuture.completedFuture(hex));
    }

    /** A hash that somebody is computing. */
    public static FileHash coming(CompletableFuture<String> hex) {
        return new FileHash(hex);
    }

    /**
     * In lower-case hexadecimal.
     *
     * @throws CompletionException where it couldn't be computed
     */
    public String hex() {
        return hex.join();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof FileHash hash && hex().equals(hash.hex());
    }

    @Override
    public int hashCode() {
        return hex().hashCode();
    }

    @Override
    public String toString() {
        return hex();
    }
}
