package evenblade.input.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenblade.base.fact.WarningCode;
import evenblade.input.audio.SampleCoding;
import evenblade.input.intake.Intake;
import evenblade.input.intake.IntakeOptions;
import evenblade.input.intake.RecordingReader;
import evenblade.input.recording.SampleStream;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GrowingWavTest {
    @TempDir
    Path folder;

    private static InputFormat format(int channels, int bits) {
        return new InputFormat(8000, channels, SampleCoding.signed(bits, ByteOrder.LITTLE_ENDIAN));
    }

    private static byte[] noise(int bytes) {
        byte[] noise = new byte[bytes];
        new Random(1).nextBytes(noise);
        return noise;
    }

    private static SampleStream read(Path file) {
        return ((Intake.Streamed) RecordingReader.open(file, IntakeOptions.NONE)).sound();
    }

    @ParameterizedTest
    @CsvSource({"1, 16", "2, 16", "1, 24", "2, 24", "3, 24", "2, 32", "1, 32"})
    void whatIsFinishedIsReadBackByteForByteByOurReaderAndByThePlatforms(int channels, int bits) throws Exception {
        Path file = folder.resolve("a.wav");
        InputFormat format = format(channels, bits);
        byte[] samples = noise(8001 * format.frameBytes());
        try (GrowingWav wav = new GrowingWav(file, format)) {
            wav.append(samples, samples.length);
            wav.finish(List.of());
        }

        SampleStream read = read(file);
        assertThat(read.header().bitsPerSample()).isEqualTo(bits);
        assertThat(read.deliverTo((block, frames) -> {}).frames()).isEqualTo(8001);
        assertThat(read(file).deliverTo((block, frames) -> {}).warnings())
                .as("nothing had to be repaired")
                .noneMatch(w -> w.code() == WarningCode.LENGTH_REPAIRED);
        try (AudioInputStream platform =
                AudioSystem.getAudioInputStream(new ByteArrayInputStream(Files.readAllBytes(file)))) {
            assertThat(platform.getFormat().getSampleSizeInBits()).isEqualTo(bits);
            assertThat(platform.readAllBytes()).isEqualTo(samples);
        }
    }

    @Test
    void atAnyMomentTheFileIsReadableAndLacksAtMostWhatCameSinceItWasLastSettled() throws Exception {
        Path file = folder.resolve("a.wav");
        InputFormat format = format(2, 24);
        byte[] block = noise(800 * format.frameBytes());
        try (GrowingWav wav = new GrowingWav(file, format)) {
            for (int i = 1; i <= 40; i++) {
                wav.append(block, block.length);
                if (i % 10 == 0) {
                    wav.settle();
                    assertThat(read(file).deliverTo((b, f) -> {}).warnings())
                            .as("just settled")
                            .noneMatch(w -> w.code() == WarningCode.LENGTH_REPAIRED);
                }
                if (i > 12) {
                    Path copy = Files.copy(file, folder.resolve("copy" + i + ".wav"));
                    long frames = read(copy).deliverTo((b, f) -> {}).frames();
                    assertThat(frames).isBetween(800L * (i / 10 * 10), 800L * i);
                }
            }
        }
    }

    @Test
    void aFileThatIsCutOffAnywhereBehindItsHeaderIsReadAsFarAsItGoes() throws Exception {
        Path file = folder.resolve("a.wav");
        InputFormat format = format(1, 16);
        byte[] samples = noise(2 * 16_000);
        try (GrowingWav wav = new GrowingWav(file, format)) {
            wav.append(samples, samples.length);
            wav.finish(List.of());
        }
        byte[] whole = Files.readAllBytes(file);
        int head = whole.length - samples.length;
        for (int seconds = 1; seconds < 2; seconds++) {
            Path cut = folder.resolve("cut.wav");
            Files.write(cut, Arrays.copyOf(whole, head + 2 * 8000 * seconds + 1));
            assertThat(read(cut).deliverTo((b, f) -> {}).frames()).isEqualTo(8000L * seconds);
        }
    }

    @Test
    void gapsAreMarkedByAChunkBehindTheSamplesThatReadersPassOver() throws Exception {
        Path file = folder.resolve("a.wav");
        byte[] samples = noise(2 * 8001);
        try (GrowingWav wav = new GrowingWav(file, format(1, 16))) {
            wav.append(samples, samples.length);
            wav.finish(List.of(4000L, 6000L));
        }

        byte[] bytes = Files.readAllBytes(file);
        String tail = new String(bytes, bytes.length - 60, 4, java.nio.charset.StandardCharsets.US_ASCII);
        assertThat(tail).isEqualTo("cue ");
        assertThat(read(file).deliverTo((b, f) -> {}).frames()).isEqualTo(8001);
    }

    @Test
    void aFileThatWasRemovedWhileItGrowsIsNoticedWhenItIsSettled() throws Exception {
        Path file = folder.resolve("a.wav");
        InputFormat format = format(1, 16);
        try (GrowingWav wav = new GrowingWav(file, format)) {
            wav.append(new byte[200], 200);
            Files.delete(file);
            assertThatThrownBy(wav::settle).isInstanceOf(IOException.class).hasMessage("the file was removed");
        }
    }

    @Test
    void neverWritesOverAFile() throws Exception {
        Path file = Files.writeString(folder.resolve("a.wav"), "something dear");

        org.assertj.core.api.Assertions.assertThatThrownBy(() -> new GrowingWav(file, format(1, 16)))
                .isInstanceOf(java.nio.file.FileAlreadyExistsException.class);
        assertThat(file).hasContent("something dear");
    }
}
