package evenblade.keep.practice;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.input.recording.Series;
import evenblade.input.recording.TimeBase;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FilesTest {
    @TempDir
    Path folder;

    @ParameterizedTest
    @ValueSource(ints = {16, 24})
    void thePlatformsReaderGetsBackEverySampleOfAWavFile(int bits) throws Exception {
        Path file = folder.resolve("run.wav");
        double step = 50.0 / (1 << (bits - 1));
        double[] left = {0, step, -step, 2.4 * step, 1000 * step, 80, -80};
        double[] right = {1, 2, 3, 4, 5, 6, 7};
        new WavFile(4000, bits, 50, "invented").write(file, List.of(left, right));

        try (AudioInputStream in = AudioSystem.getAudioInputStream(file.toFile())) {
            assertThat(in.getFormat().getSampleRate()).isEqualTo(4000f);
            assertThat(in.getFormat().getChannels()).isEqualTo(2);
            assertThat(in.getFormat().getSampleSizeInBits()).isEqualTo(bits);
            assertThat(in.getFrameLength()).isEqualTo(7);
            byte[] bytes = in.readAllBytes();
            int most = (1 << (bits - 1)) - 1;
            int[] expected = {0, 1, -1, 2, 1000, most, -most - 1};
            for (int i = 0; i < expected.length; i++) {
                assertThat(little(bytes, 2 * i * bits / 8, bits)).isEqualTo(expected[i]);
                assertThat(little(bytes, (2 * i + 1) * bits / 8, bits)).isEqualTo(Math.round(right[i] / step));
            }
        }
        assertThat(new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1))
                .contains("ICMT")
                .contains("invented");
    }

    @Test
    void theLoggerWritesCommentsHeaderAndMilliseconds() throws IOException {
        Path file = folder.resolve("run.csv");
        TimeBase time = new TimeBase.Stamped(Series.of(0, 0.0024, 0.0049), 416);
        new LoggerFile("clock (ms)", List.of("up (m/s2)", "side (m/s2)"), ';', 0, 1)
                .write(file, List.of("invented"), time, List.of(new double[] {9.8, 9.7, 9.6}, new double[] {0, -1, 2}));

        assertThat(Files.readAllLines(file))
                .containsExactly(
                        "# invented",
                        "clock (ms);up (m/s2);side (m/s2)",
                        "0.000;9.80000;0.00000",
                        "2.400;9.70000;-1.00000",
                        "4.900;9.60000;2.00000");
    }

    @Test
    void theLoggerRepeatsRowsInTheShareAskedFor() throws IOException {
        Path file = folder.resolve("run.csv");
        TimeBase time = new TimeBase.Even(0, 100, 2000);
        new LoggerFile("clock (ms)", List.of("up (m/s2)"), ',', 0.02, 1)
                .write(file, List.of(), time, List.of(new double[2000]));
        assertThat(Files.readAllLines(file)).hasSizeBetween(2001 + 20, 2001 + 60);
    }

    private static int little(byte[] bytes, int at, int bits) {
        int value = 0;
        for (int b = 0; b < bits / 8; b++) {
            value |= (bytes[at + b] & 0xff) << (8 * b);
        }
        return value << (32 - bits) >> (32 - bits);
    }
}
