package evenblade.input.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenblade.base.problem.BadInput;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Files written by SoX 14.4.2 and libFLAC, see {@code sound/make.py}: readers checked against foreign writers. */
class OtherSoundIntakeTest {
    private static final int RATE = 2000;
    private static final int FRAMES = 3000;

    @TempDir
    Path folder;

    private Path shipped(String name) throws IOException {
        try (InputStream in = getClass().getResourceAsStream("/sound/" + name)) {
            return WaveBytes.write(folder.resolve(name), in.readAllBytes());
        }
    }

    @ParameterizedTest
    @CsvSource({
        "signed8.aiff, aiff, 8",
        "signed16.aiff, aiff, 16",
        "signed24.aiff, aiff, 24",
        "signed32.aiff, aiff, 32",
        "float32.aifc, aiff, 32",
        "signed8.au, au, 8",
        "signed16.au, au, 16",
        "signed24.au, au, 24",
        "signed32.au, au, 32",
        "float32.au, au, 32",
        "float64.au, au, 64",
        "signed8.flac, flac, 8",
        "signed16.flac, flac, 16",
        "signed24.flac, flac, 24",
        "blocks16.flac, flac, 16",
        "extensible24.wav, wav, 24"
    })
    void everyKindAndSampleFormatGivesTheSameSignal(String name, String kind, int bits) throws IOException {
        Heard heard = Heard.from(shipped(name));
        assertThat(heard.header().kind()).isEqualTo(kind);
        assertThat(heard.header().bitsPerSample()).isEqualTo(bits);
        assertThat(heard.header().sampleRateHz()).isEqualTo(RATE);
        assertThat(heard.header().lossy()).isFalse();
        assertThat(heard.summary().frames()).isEqualTo(FRAMES);
        assertThat(heard.codes()).isEmpty();
        // SoX rounds halves up and cuts when it narrows 32 bits: one whole step is the bound.
        double step = Math.scalb(1.0, 1 - Math.min(bits, 24)) + 6e-8;
        for (int lane = 0; lane < 2; lane++) {
            float[] samples = heard.lane(lane);
            double worst = 0;
            for (int i = 0; i < FRAMES; i++) {
                worst = Math.max(worst, Math.abs(samples[i] - WaveBytes.sample(i, lane, RATE)));
            }
            assertThat(worst).isLessThanOrEqualTo(step);
        }
    }

    @Test
    void lossyAuIsRefusedByName() throws IOException {
        Path file = shipped("ulaw.au");
        assertThatThrownBy(() -> Heard.from(file)).isInstanceOf(BadInput.class).hasMessageContaining("µ-law");
    }

    @Test
    void aFlacFileCutOffIsReadAsFarAsItGoesAndSaysSo() throws IOException {
        byte[] whole = Files.readAllBytes(shipped("blocks16.flac"));
        Path cut = WaveBytes.write(folder.resolve("cut.flac"), Arrays.copyOf(whole, whole.length - 10));
        Heard heard = Heard.from(cut);
        // Blocks of 576 frames: five whole ones and a rest, which the cut damages.
        assertThat(heard.summary().frames()).isEqualTo(5 * 576);
        assertThat(heard.codes()).contains("length-repaired");
    }

    @Test
    void aDamagedFlacBlockIsLeftOutAndCounted() throws IOException {
        byte[] whole = Files.readAllBytes(shipped("blocks16.flac"));
        for (int i = 0; i < 10; i++) {
            whole[whole.length - 500 + i] ^= 0x5a;
        }
        Path damaged = WaveBytes.write(folder.resolve("damaged.flac"), whole);
        Heard heard = Heard.from(damaged);
        assertThat(heard.summary().frames()).isBetween(2L * 576, (long) FRAMES);
        assertThat(heard.codes()).contains("damaged-blocks");
    }

    @Test
    void anAiffFileWhoseHeaderPromisesMoreIsReadToItsEnd() throws IOException {
        byte[] whole = Files.readAllBytes(shipped("signed16.aiff"));
        Path cut = WaveBytes.write(folder.resolve("cut.aiff"), Arrays.copyOf(whole, whole.length - 4 * 300));
        Heard heard = Heard.from(cut);
        assertThat(heard.summary().frames()).isEqualTo(FRAMES - 300);
        assertThat(heard.codes()).containsExactly("length-repaired");
    }

    @ParameterizedTest
    @CsvSource({
        "ID3, MP3",
        "OggS, Ogg",
        "xxxxftypM4A , M4A",
        "RIFFxxxxAVI LIST, 'RIFF file of type \"AVI \"'",
        "wvpk, WavPack",
        "caff, CAF"
    })
    void kindsThatCantBeReadAreNamedWithThoseThatCan(String start, String name) throws IOException {
        Path file = WaveBytes.write(folder.resolve("run.wav"), (start + "\0\1\2\3 and more bytes").getBytes());
        assertThatThrownBy(() -> Heard.from(file))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining(name)
                .hasMessageContaining("expected " + FileKind.READABLE);
    }

    @Test
    void emptyFilesFoldersAndMissingFilesAreRefused() throws IOException {
        Path empty = Files.createFile(folder.resolve("empty.wav"));
        assertThatThrownBy(() -> Heard.from(empty)).hasMessageContaining("an empty file");
        assertThatThrownBy(() -> Heard.from(folder)).hasMessageContaining("a folder, expected " + FileKind.READABLE);
        assertThatThrownBy(() -> Heard.from(folder.resolve("none.wav"))).hasMessageContaining("no such file");
    }
}
