package evenblade.input.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenblade.input.recording.FileHash;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import java.util.Random;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@DisplayName("A file that is read and hashed at once")
@Timeout(60)
class HashedFileTest {
    @TempDir
    private Path folder;

    @Test
    @DisplayName("The hash is that of all bytes, whatever was read, skipped or left, and however far it falls behind")
    void theHashIsOfAllBytes() throws Exception {
        byte[] bytes = new byte[(34 << 20) + 17]; // more than the hash may fall behind by
        new Random(5).nextBytes(bytes);
        Path file = Files.write(folder.resolve("x"), bytes);
        String expected = HexFormat.of().formatHex(HashedFile.sha256().digest(bytes));

        FileHash hash;
        try (HashedFile read = new HashedFile(file)) {
            read.skipTo(44);
            assertThat(read.read()).isEqualTo(bytes[44] & 0xff);
            byte[] part = read.readNBytes(1 << 20);
            assertThat(part).isEqualTo(java.util.Arrays.copyOfRange(bytes, 45, 45 + (1 << 20)));
            hash = read.hashOfAll();
        }

        assertThat(hash.hex()).isEqualTo(expected);
    }

    @Test
    @DisplayName("An empty file has the hash of nothing")
    void emptyFile() throws Exception {
        Path file = Files.createFile(folder.resolve("x"));
        FileHash hash;
        try (HashedFile read = new HashedFile(file)) {
            assertThat(read.read()).isEqualTo(-1);
            hash = read.hashOfAll();
        }
        // FIPS 180-4, the hash of the empty message (NIST's examples).
        assertThat(hash.hex()).isEqualTo("e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
    }

    @Test
    @DisplayName("Closed early, its threads end")
    void closedEarly() throws Exception {
        Path file = Files.write(folder.resolve("x"), new byte[34 << 20]);
        int before = ours();
        try (HashedFile read = new HashedFile(file)) {
            read.skipTo(1000);
            assertThat(ours()).isPositive();
        }
        while (ours() > before) {
            Thread.onSpinWait();
        }
    }

    @Test
    @DisplayName("A folder in place of a file is an error of reading")
    void notAFile() {
        assertThatThrownBy(() -> {
                    try (HashedFile read = new HashedFile(folder)) {
                        read.read();
                    }
                })
                .isInstanceOf(java.io.IOException.class);
    }

    private static int ours() {
        return (int) Thread.getAllStackTraces().keySet().stream()
                .filter(thread -> thread.getName().startsWith("file "))
                .count();
    }
}
