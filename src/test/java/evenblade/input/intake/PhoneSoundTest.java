package evenblade.input.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.problem.BadInput;
import evenblade.base.units.FullScale;
import evenblade.base.units.SignalUnit;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What phones make, from files that foreign encoders wrote: see {@code reference/codecs/make-samples.sh}. */
class PhoneSoundTest {
    private static final Path SAMPLES = Path.of("src/test/resources/reference/codecs");

    @TempDir
    Path folder;

    /** Tones of 0.05, 0.2 and 0.15 of full scale were put in; the bounds are what encoders do at these low rates. */
    @ParameterizedTest
    @CsvSource({
        "tones.m4a, aac-48k, 44100",
        "tones.mov, aac-48k, 44100",
        "tones.mp3, mp3-48k, 44100",
        "tones.ogg, vorbis-64k, 44100",
        "tones.opus, opus-24k, 48000"
    })
    void theTonesInAPhonesFileAreHeardAndItsLossIsSaid(String name, String kind, double rateHz) {
        Heard heard = Heard.from(SAMPLES.resolve(name));

        assertThat(heard.header().kind()).isEqualTo(kind);
        assertThat(heard.header().lossy()).isTrue();
        assertThat(heard.header().sampleRateHz()).isEqualTo(rateHz);
        assertThat(heard.header().channels()).hasSize(1);
        assertThat(heard.summary().frames() / rateHz).isCloseTo(3, within(0.1));
        assertThat(heard.codes()).isEmpty();
        float[] samples = heard.lane(0);
        assertThat(amplitude(samples, 30, rateHz)).isCloseTo(0.05, within(0.015));
        assertThat(amplitude(samples, 90, rateHz)).isCloseTo(0.2, within(0.02));
        assertThat(amplitude(samples, 146, rateHz)).isCloseTo(0.15, within(0.015));
        assertThat(amplitude(samples, 60, rateHz))
                .as("where nothing was put in")
                .isLessThan(0.01);
    }

    @ParameterizedTest
    @ValueSource(strings = {"tones.m4a", "tones.mp3", "tones.ogg", "tones.opus"})
    void sampleValuesOfALossyFileAreNeverMadeAbsolute(String name) {
        IntakeOptions options = new IntakeOptions(
                Optional.of(new FullScale(50, SignalUnit.METRE_PER_SECOND_SQUARED)), IntakeOptions.NONE.table());
        assertThatThrownBy(() -> Heard.from(SAMPLES.resolve(name), options))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("never absolute");
    }

    /** Two thirds of a file: two seconds, said to be cut or damaged; or refused where its table of places is lost. */
    @ParameterizedTest
    @ValueSource(strings = {"tones.m4a", "tones.mp3", "tones.ogg", "tones.opus", "tones.flac"})
    void aFileThatWasCutOffIsReadWithAWarningOrRefused(String name) throws IOException {
        byte[] whole = Files.readAllBytes(SAMPLES.resolve(name));
        Path cut = Files.write(folder.resolve(name), Arrays.copyOf(whole, whole.length * 2 / 3 - 7));
        try {
            Heard heard = Heard.from(cut);
            assertThat(heard.summary().frames() / heard.header().sampleRateHz()).isBetween(1.0, 2.6);
            assertThat(heard.codes()).containsAnyOf("damaged-blocks", "length-repaired");
        } catch (BadInput e) {
            // The places of M4A stood at its end; of Opus, whole seconds are packed together, and one is left.
            assertThat(e).hasMessageMatching(".*(nothing can be decoded|s of signal).*");
            assertThat(name).isIn("tones.m4a", "tones.opus");
        }
    }

    /** As a file system leaves a file whose end it never wrote; the notes of this one promise what there is. */
    @Test
    void soundBehindWhichMuchElseLiesIsReadWithAWarning() throws IOException {
        byte[] sound = Files.readAllBytes(SAMPLES.resolve("tones.mp3"));
        Path file = Files.write(folder.resolve("more.mp3"), Arrays.copyOf(sound, sound.length + 100_000));

        Heard heard = Heard.from(file);

        assertThat(heard.summary().frames() / 44_100.0).isCloseTo(3, within(0.1));
        assertThat(heard.codes()).containsExactly("damaged-blocks");
    }

    @Test
    void aCommentCountThatNoMemoryHoldsIsSkipped() throws IOException {
        byte[] whole = Files.readAllBytes(SAMPLES.resolve("tones.flac"));
        int at = indexOf(whole, "title=");
        // The count stands before the first comment's length (Vorbis comment specification, from memory).
        Arrays.fill(whole, at - 8, at - 4, (byte) 0x7f);
        Heard heard = Heard.from(Files.write(folder.resolve("comments.flac"), whole));
        assertThat(heard.summary().frames()).isEqualTo(3 * 44_100);
        assertThat(heard.codes()).isEmpty();
    }

    /** The sum stands in bytes 26 to 41 of the file (RFC 9639, 8.2); all zeros mean that the encoder didn't know it. */
    @Test
    void aFlacWhoseChecksumIsOfOtherSoundSaysSo() throws IOException {
        byte[] whole = Files.readAllBytes(SAMPLES.resolve("tones.flac"));
        whole[26] ^= 1;
        assertThat(Heard.from(Files.write(folder.resolve("other.flac"), whole)).codes())
                .containsExactly("checksum-differs");
        Arrays.fill(whole, 26, 42, (byte) 0);
        assertThat(Heard.from(Files.write(folder.resolve("unknown.flac"), whole))
                        .codes())
                .isEmpty();
    }

    /** 16 bit in one channel, 24 bit in two. */
    @ParameterizedTest
    @ValueSource(strings = {"tones.flac", "stereo.flac"})
    void aFlacThatIsWholeSaysNothingOfItsChecksum(String name) {
        assertThat(Heard.from(SAMPLES.resolve(name)).codes()).isEmpty();
    }

    @Test
    void aDecoderThatNeverEndsIsLeftBehind() throws IOException {
        CodedForm circle = (bytes, taker) -> {
            taker.format(new CodedForm.Format("flac", false, 1, 1000, 16, 0));
            taker.frames(new float[1000]);
            while (!Thread.currentThread().isInterrupted()) {
                Thread.onSpinWait();
            }
        };
        // A tenth of a second of processor time in place of the usual seconds.
        try (CagedSource source =
                new CagedSource(circle, new java.io.ByteArrayInputStream(new byte[10_000]), 100_000_000)) {
            source.format();
            assertThat(source.read(new float[2000], 2000)).isEqualTo(1000);
            assertThat(source.damagedPlaces()).isEqualTo(1);
        }
    }

    @Test
    void whatADecoderGivesThatIsNoNumberIsSilencedAndSaid() throws IOException {
        CodedForm nonsense = (bytes, taker) -> {
            taker.format(new CodedForm.Format("flac", false, 1, 1000, 16, 0));
            taker.frames(new float[] {0.5f, Float.NaN, Float.POSITIVE_INFINITY, 1e30f});
        };
        try (CagedSource source = new CagedSource(nonsense, new java.io.ByteArrayInputStream(new byte[10_000]))) {
            source.format();
            float[] into = new float[4];
            assertThat(source.read(into, 4)).isEqualTo(4);
            assertThat(into).containsExactly(0.5f, 0, 0, 0);
            assertThat(source.damagedPlaces()).isEqualTo(1);
        }
    }

    /** The figures in the program are those of the measurement beside its script. */
    @Test
    void theMeasuredChangesOfCodecsAreThoseInTheProgram() throws IOException {
        List<String> rows = Files.readAllLines(SAMPLES.resolve("measured.csv"));
        for (CodecChange each : CodecChange.MEASURED) {
            List<String[]> of = rows.stream()
                    .map(row -> row.split(","))
                    .filter(row -> row[0].equals(each.codec()) && row[1].equals(String.valueOf(each.kilobits())))
                    .toList();
            assertThat(of).hasSize(8);
            double[] once = of.stream()
                    .mapToDouble(row -> Double.parseDouble(row[3]) / 100)
                    .sorted()
                    .toArray();
            double[] pass = of.stream()
                    .mapToDouble(row -> Double.parseDouble(row[5]) / 100)
                    .sorted()
                    .toArray();
            assertThat(new double[] {each.onceLow(), each.onceHigh(), each.bladePassLow(), each.bladePassHigh()})
                    .containsExactly(new double[] {once[0], once[7], pass[0], pass[7]}, within(6e-4));
        }
        assertThat(CodecChange.MEASURED).hasSize((rows.size() - 1) / 8);
        assertThat(CodecChange.of("opus-16k").orElseThrow().kilobits()).isEqualTo(16);
        assertThat(CodecChange.of("mp3-vbr").orElseThrow().kilobits()).isEqualTo(32);
        assertThat(CodecChange.of("wav")).isEmpty();
    }

    private static double amplitude(float[] samples, double hz, double rateHz) {
        // Whole turns of each tone in two seconds from 0.5 s on: its product with a sine and a cosine.
        int from = (int) (rateHz / 2);
        int count = (int) (2 * rateHz);
        double sine = 0;
        double cosine = 0;
        for (int i = 0; i < count; i++) {
            sine += samples[from + i] * Math.sin(2 * Math.PI * hz * i / rateHz);
            cosine += samples[from + i] * Math.cos(2 * Math.PI * hz * i / rateHz);
        }
        return 2 * Math.hypot(sine, cosine) / count;
    }

    private static int indexOf(byte[] bytes, String text) {
        return new String(bytes, java.nio.charset.StandardCharsets.ISO_8859_1).indexOf(text);
    }
}
