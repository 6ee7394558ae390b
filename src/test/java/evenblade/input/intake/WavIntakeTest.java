package evenblade.input.intake;

import static evenblade.input.intake.WaveBytes.FLOAT;
import static evenblade.input.intake.WaveBytes.PCM;
import static evenblade.input.intake.WaveBytes.samples;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.problem.BadInput;
import evenblade.base.units.FullScale;
import evenblade.base.units.SignalUnit;
import evenblade.input.recording.TableReading;
import evenblade.tell.document.Face;
import evenblade.tell.document.Phrases;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class WavIntakeTest {
    private static final int RATE = 8000;
    private static final int FRAMES = 12_345;

    @TempDir
    Path folder;

    private static void holdsTheSignal(Heard heard, int frames, double tolerance) {
        assertThat(heard.summary().frames()).isEqualTo(frames);
        for (int lane = 0; lane < heard.header().channels().size(); lane++) {
            float[] samples = heard.lane(lane);
            for (int i = 0; i < frames; i++) {
                double meant = WaveBytes.sample(i, lane, heard.header().sampleRateHz());
                if (Math.abs(samples[i] - meant) > tolerance) {
                    assertThat((double) samples[i])
                            .as("frame %d of lane %d", i, lane)
                            .isCloseTo(meant, within(tolerance));
                }
            }
        }
    }

    @ParameterizedTest
    @CsvSource({
        "1, 8, 1",
        "1, 16, 1",
        "1, 24, 1",
        "1, 32, 1",
        "3, 32, 1",
        "3, 64, 1",
        "1, 8, 2",
        "1, 16, 2",
        "1, 24, 3",
        "1, 32, 4",
        "3, 32, 6",
        "3, 64, 2"
    })
    void everySampleFormatGivesTheSameSignalWithinHalfAQuantum(int tag, int bits, int channels) {
        Path file = new WaveBytes()
                .format(tag, channels, RATE, bits)
                .chunk("data", samples(tag, bits, channels, FRAMES, RATE))
                .writeTo(folder.resolve("run.wav"));
        Heard heard = Heard.from(file);
        double half = tag == FLOAT ? 1e-7 : Math.scalb(0.5, 1 - bits) + 6e-8;
        holdsTheSignal(heard, FRAMES, half);
        assertThat(heard.header().bitsPerSample()).isEqualTo(bits);
        assertThat(heard.header().kind()).isEqualTo("wav");
        assertThat(heard.codes()).isEmpty();
    }

    @Test
    void channelsGetTheNamesPeopleUse() {
        assertThat(namesOf(1)).containsExactly("mono");
        assertThat(namesOf(2)).containsExactly("left", "right");
        assertThat(namesOf(3)).containsExactly("channel 1", "channel 2", "channel 3");
    }

    private java.util.List<String> namesOf(int channels) {
        Path file = new WaveBytes()
                .format(PCM, channels, RATE, 16)
                .chunk("data", samples(PCM, 16, channels, RATE, RATE))
                .writeTo(folder.resolve("n" + channels + ".wav"));
        return Heard.from(file).header().channels();
    }

    @Test
    void extensibleHeadersWithFewerValidBitsAreReadByTheirContainer() {
        Path file = new WaveBytes()
                .extensible(PCM, 2, RATE, 32, 24)
                .chunk("data", samples(PCM, 32, 2, FRAMES, RATE))
                .writeTo(folder.resolve("run.wav"));
        Heard heard = Heard.from(file);
        holdsTheSignal(heard, FRAMES, 1e-7);
        assertThat(heard.header().bitsPerSample()).isEqualTo(24);
    }

    @Test
    void extensibleFloatIsFloat() {
        Path file = new WaveBytes()
                .extensible(FLOAT, 1, RATE, 32, 32)
                .chunk("data", samples(FLOAT, 32, 1, FRAMES, RATE))
                .writeTo(folder.resolve("run.wav"));
        holdsTheSignal(Heard.from(file), FRAMES, 1e-7);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void otherChunksBeforeAndAfterChangeNothing(long seed) {
        Random random = new Random(seed);
        WaveBytes wave = new WaveBytes();
        String[] others = {"JUNK", "bext", "LIST", "fact", "cue "};
        for (int i = random.nextInt(4); i > 0; i--) {
            wave.chunk(others[random.nextInt(others.length)], noise(random));
        }
        wave.format(PCM, 1, RATE, 16);
        for (int i = random.nextInt(4); i > 0; i--) {
            wave.chunk(others[random.nextInt(others.length)], noise(random));
        }
        wave.chunk("data", samples(PCM, 16, 1, FRAMES, RATE));
        for (int i = random.nextInt(3); i > 0; i--) {
            wave.chunk(others[random.nextInt(others.length)], noise(random));
        }
        Heard heard = Heard.from(wave.writeTo(folder.resolve("run.wav")));
        holdsTheSignal(heard, FRAMES, 2e-5);
        assertThat(heard.codes()).isEmpty();
    }

    /** Odd lengths come up half the time, so pad bytes are met. */
    private static byte[] noise(Random random) {
        byte[] bytes = new byte[random.nextInt(9000)];
        random.nextBytes(bytes);
        return bytes;
    }

    @Test
    void samplesBeforeTheFormatChunkAreFound() {
        Path file = new WaveBytes()
                .chunk("data", samples(PCM, 16, 1, FRAMES, RATE))
                .format(PCM, 1, RATE, 16)
                .writeTo(folder.resolve("run.wav"));
        holdsTheSignal(Heard.from(file), FRAMES, 2e-5);
    }

    @Test
    void sizesOfRf64ComeFromItsOwnChunk() {
        ByteBuffer ds64 = WaveBytes.little(28);
        ds64.putLong(0).putLong(2L * FRAMES).putLong(FRAMES);
        Path file = new WaveBytes()
                .form("RF64")
                .chunk("ds64", ds64.array())
                .format(PCM, 1, RATE, 16)
                .chunk("data", samples(PCM, 16, 1, FRAMES, RATE), 0xFFFF_FFFFL)
                .chunk("LIST", new byte[6000])
                .writeTo(folder.resolve("run.wav"));
        Heard heard = Heard.from(file);
        holdsTheSignal(heard, FRAMES, 2e-5);
        assertThat(heard.codes()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(longs = {0, 0xFFFF_FFFFL, 10_000_000L, 2_000L})
    void aHeaderThatLiesAboutTheLengthIsRepairedAndSaid(long declared) {
        Path file = new WaveBytes()
                .format(PCM, 1, RATE, 16)
                .chunk("data", samples(PCM, 16, 1, FRAMES, RATE), declared)
                .writeTo(folder.resolve("run.wav"));
        Heard heard = Heard.from(file);
        holdsTheSignal(heard, FRAMES, 2e-5);
        assertThat(heard.codes()).containsExactly("length-repaired");
        assertThat(Phrases.of(Face.COMMAND_LINE).text(heard.summary().warnings().get(0)))
                .contains("1.54 s");
    }

    @Test
    void aCutOffFileIsReadAsFarAsItGoes() throws Exception {
        byte[] whole = new WaveBytes()
                .format(PCM, 2, RATE, 16)
                .chunk("data", samples(PCM, 16, 2, FRAMES, RATE))
                .bytes();
        Path file = WaveBytes.write(folder.resolve("cut.wav"), Arrays.copyOf(whole, 44 + 4 * 9000 + 3));
        Heard heard = Heard.from(file);
        holdsTheSignal(heard, 9000, 2e-5);
        assertThat(heard.codes()).containsExactly("length-repaired");
    }

    @ParameterizedTest
    @ValueSource(ints = {4, 11, 12, 19, 25, 36, 43, 44})
    void aCutInsideTheHeaderIsRefusedWithItsByte(int length) {
        byte[] whole = new WaveBytes()
                .format(PCM, 1, RATE, 16)
                .chunk("data", samples(PCM, 16, 1, FRAMES, RATE))
                .bytes();
        Path file = WaveBytes.write(folder.resolve("cut.wav"), Arrays.copyOf(whole, length));
        assertThatThrownBy(() -> Heard.from(file))
                .isInstanceOf(BadInput.class)
                .hasMessageStartingWith(file + ":byte ")
                .hasMessageContaining("expected");
    }

    @Test
    void aFileWithoutAFormatChunkIsRefused() {
        Path file =
                new WaveBytes().chunk("data", samples(PCM, 16, 1, FRAMES, RATE)).writeTo(folder.resolve("run.wav"));
        assertThatThrownBy(() -> Heard.from(file))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("without a format chunk");
    }

    @ParameterizedTest
    @CsvSource({"2, ADPCM", "7, µ-law", "85, MPEG", "4660, format 4660"})
    void packedSamplesAreRefusedByName(int tag, String name) {
        Path file = new WaveBytes()
                .format(tag, 1, RATE, 8)
                .chunk("data", new byte[RATE * 2])
                .writeTo(folder.resolve("run.wav"));
        assertThatThrownBy(() -> Heard.from(file))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining(name)
                .hasMessageContaining("PCM");
    }

    @Test
    void textNamedWavIsRefusedSayingWhatItIs() throws Exception {
        Path file = Files.writeString(folder.resolve("notes.wav"), "time,ax\n0,1\n");
        assertThatThrownBy(() -> Heard.from(file))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("text that starts \"time,ax\"")
                .hasMessageContaining("expected a sound file");
    }

    @Test
    void theKindIsToldByContentAndNotByName() {
        Path file = new WaveBytes()
                .format(PCM, 1, RATE, 16)
                .chunk("data", samples(PCM, 16, 1, FRAMES, RATE))
                .writeTo(folder.resolve("run.csv"));
        holdsTheSignal(Heard.from(file), FRAMES, 2e-5);
    }

    @Test
    void halfASecondIsTooLittle() {
        Path file = new WaveBytes()
                .format(PCM, 1, RATE, 16)
                .chunk("data", samples(PCM, 16, 1, RATE / 2, RATE))
                .writeTo(folder.resolve("run.wav"));
        assertThatThrownBy(() -> Heard.from(file))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("0.5 s of signal, expected at least 1 s");
    }

    @Test
    void silenceInEveryChannelIsRefusedAndInOneChannelIsTold() {
        Path silent = new WaveBytes()
                .format(PCM, 2, RATE, 16)
                .chunk("data", new byte[8 * RATE])
                .writeTo(folder.resolve("silent.wav"));
        assertThatThrownBy(() -> Heard.from(silent))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("same value throughout in every one of 2 channels");
        byte[] data = samples(PCM, 16, 2, RATE * 2, RATE);
        for (int i = 0; i < data.length; i += 4) {
            data[i] = 0;
            data[i + 1] = 0;
        }
        Path half = new WaveBytes().format(PCM, 2, RATE, 16).chunk("data", data).writeTo(folder.resolve("half.wav"));
        Heard heard = Heard.from(half);
        assertThat(heard.codes()).containsExactly("constant-signal");
        assertThat(Phrases.of(Face.COMMAND_LINE).text(heard.summary().warnings().get(0)))
                .contains("'left'");
    }

    @Test
    void theHashIsThatOfTheWholeFile() throws Exception {
        Path file = new WaveBytes()
                .format(PCM, 1, RATE, 16)
                .chunk("data", samples(PCM, 16, 1, 700_000, RATE))
                .chunk("LIST", new byte[777])
                .writeTo(folder.resolve("run.wav"));
        String expected =
                HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file)));
        assertThat(Heard.from(file).summary().sha256().hex()).isEqualTo(expected);
    }

    @Test
    void aFullScaleMakesTheQualityCountInItsUnit() {
        Path file = new WaveBytes()
                .format(PCM, 1, RATE, 16)
                .chunk("data", samples(PCM, 16, 1, FRAMES, RATE))
                .writeTo(folder.resolve("run.wav"));
        IntakeOptions options = new IntakeOptions(
                Optional.of(new FullScale(50, SignalUnit.METRE_PER_SECOND_SQUARED)), TableReading.UNSAID);
        Heard heard = Heard.from(file, options);
        assertThat(heard.header().fullScale()).isEqualTo(50);
        assertThat(heard.header().unit()).isEqualTo(SignalUnit.METRE_PER_SECOND_SQUARED);
        assertThat(heard.summary().quality().get(0).peak()).isCloseTo(25, within(0.01));
        assertThat(heard.summary().quality().get(0).rms()).isCloseTo(25 / Math.sqrt(2), within(0.05));
    }

    @Test
    void notNumbersInFloatFilesAreSilencedAndTold() {
        byte[] data = samples(FLOAT, 32, 1, FRAMES, RATE);
        ByteBuffer.wrap(data)
                .order(java.nio.ByteOrder.LITTLE_ENDIAN)
                .putFloat(4000, Float.NaN)
                .putFloat(8000, Float.NEGATIVE_INFINITY);
        Path file =
                new WaveBytes().format(FLOAT, 1, RATE, 32).chunk("data", data).writeTo(folder.resolve("run.wav"));
        Heard heard = Heard.from(file);
        assertThat(heard.codes()).containsExactly("not-a-number");
        assertThat(heard.lane(0)[1000]).isZero();
    }

    @Test
    void aFileOfThreeGigabytesIsStreamedAndItsHeaderReadAtOnce() throws Exception {
        Path file = folder.resolve("long.wav");
        byte[] start = new WaveBytes()
                .format(PCM, 2, 48_000, 16)
                .chunk("data", new byte[0], 3_000_000_000L)
                .bytes();
        try (RandomAccessFile sparse = new RandomAccessFile(file.toFile(), "rw")) {
            sparse.write(start);
            sparse.setLength(start.length + 3_000_000_000L);
        }
        Intake.Streamed opened = (Intake.Streamed) RecordingReader.open(file, IntakeOptions.NONE);
        assertThat(opened.sound().header().frames()).hasValue(750_000_000L);
    }
}
