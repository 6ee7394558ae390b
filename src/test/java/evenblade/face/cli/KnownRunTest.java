package evenblade.face.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.face.app.AnalyseRecording;
import evenblade.face.app.AnalysisRequest;
import evenblade.input.capture.OwnSoundServer;
import evenblade.input.intake.Intake;
import evenblade.input.intake.IntakeOptions;
import evenblade.input.intake.RecordingReader;
import evenblade.keep.practice.Noise;
import evenblade.keep.practice.SpeedProfile;
import evenblade.keep.practice.SyntheticRun;
import evenblade.machine.installation.InstallationFile;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import evenblade.measure.orders.RunOrders;
import evenblade.measure.speed.Dwell;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A minute of a known run, played through a real sound server and recorded by the program. */
@Tag("long")
class KnownRunTest {
    private static final Path INSTALLATION = Path.of("samples/geared-three-blade/installation.json");
    private static final int RATE_HZ = 48_000;
    private static final int PLAYED_S = 70;
    private static final int TAKEN_S = 60;
    private static final double FIRING = 2 * 51 / 21.0;
    private static final SpeedProfile SPEED =
            SpeedProfile.steady(4800 / 60.0 / 51 * 21, PLAYED_S).wandering(0.004, 3);
    private static final SyntheticRun RUN = SyntheticRun.at(SPEED)
            .withLine(1, 0.05, 20)
            .withLine(3, 0.2, 100)
            .withLine(6, 0.08, 40)
            .withLine(FIRING, 0.1, 200)
            .withNoise(new Noise(0.005, 0))
            .withSeed(4);

    /** Normal quantile of a 95 % interval of one reading. */
    private static final double ALONE_95 = 1.960;

    /** The same for four readings at once, so that all four hold in 95 of 100 runs: 1 - 0.05 / 4 / 2 (Bonferroni). */
    private static final double FOUR_AT_ONCE_95 = 2.498;

    @TempDir
    Path folder;

    /** Both channels of the run as they are played; the second is a tone of -6 dB. */
    private static short[] played() {
        double[] run = RUN.samples(RUN.evenClock(RATE_HZ));
        double amplitude = Math.pow(10, -6 / 20.0);
        short[] sound = new short[2 * run.length];
        for (int i = 0; i < run.length; i++) {
            sound[2 * i] = (short) Math.round(32_768 * run[i]);
            sound[2 * i + 1] = (short) Math.round(32_768 * amplitude * Math.sin(2 * Math.PI * 997 * i / RATE_HZ));
        }
        return sound;
    }

    private static byte[] bytes(short... sound) {
        ByteBuffer bytes = ByteBuffer.allocate(2 * sound.length).order(ByteOrder.LITTLE_ENDIAN);
        bytes.asShortBuffer().put(sound);
        return bytes.array();
    }

    private Path taken(short[] sound) throws Exception {
        Path file = folder.resolve("taken.wav");
        try (OwnSoundServer server = OwnSoundServer.start(Files.createDirectory(folder.resolve("server")))) {
            Process player = server.player();
            try {
                Thread feed = new Thread(() -> send(player.getOutputStream(), bytes(sound)), "player");
                feed.setDaemon(true);
                feed.start();
                Thread.sleep(3000);
                CommandLineRun run = ChildProgram.run(
                        server.environment(),
                        folder,
                        ChildProgram.command(
                                List.of(),
                                "record",
                                file.toString(),
                                "--seconds",
                                String.valueOf(TAKEN_S),
                                "--rate",
                                "48000",
                                "--channels",
                                "2",
                                "--installation",
                                INSTALLATION.toString()));
                assertThat(run.status()).as(run.err()).isZero();
                assertThat(run.out()).contains("no sample missing by the clock");
            } finally {
                player.destroyForcibly();
            }
        }
        return file;
    }

    private static void send(OutputStream to, byte[] sound) {
        try (to) {
            to.write(sound);
        } catch (IOException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static short[] samples(Path file) {
        short[] samples = new short[2 * TAKEN_S * RATE_HZ];
        int[] at = {0};
        ((Intake.Streamed) RecordingReader.open(file, IntakeOptions.NONE))
                .sound()
                .deliverTo((block, frames) -> {
                    for (int i = 0; i < 2 * frames; i++) {
                        float exact = block[i] * 32_768;
                        assertThat(exact).as("16 bits in 24").isEqualTo(Math.round(exact));
                        samples[at[0]++] = (short) exact;
                    }
                });
        assertThat(at[0]).as("samples").isEqualTo(samples.length);
        return samples;
    }

    private static int beginning(short[] taken, short[] played) {
        short[] first = Arrays.copyOf(taken, 400);
        for (int from = 0; from + taken.length <= played.length; from += 2) {
            if (Arrays.mismatch(played, from, from + first.length, first, 0, first.length) < 0) {
                return from;
            }
        }
        throw new AssertionError("what was recorded is nowhere in what was played");
    }

    @Test
    void isRecordedSampleForSampleAndReadAsTheFileThatWasPlayedIs() throws Exception {
        short[] played = played();
        Path file = taken(played);

        short[] taken = samples(file);
        int from = beginning(taken, played);
        assertThat(Arrays.mismatch(played, from, from + taken.length, taken, 0, taken.length))
                .as("first sample that differs")
                .isEqualTo(-1);

        Path source = folder.resolve("source.wav");
        byte[] all = bytes(played);
        AudioSystem.write(
                new AudioInputStream(
                        new ByteArrayInputStream(all), new AudioFormat(RATE_HZ, 16, 2, true, false), all.length / 4),
                AudioFileFormat.Type.WAVE,
                source.toFile());
        double fromS = from / 2.0 / RATE_HZ;
        Read ours = read(file);
        Read theirs = read(source);
        tell(ours, theirs, fromS);
        // The file holds ten seconds more, over which the speed wanders: its reading is compared over what both hold.
        double wander = SPEED.meanHz(0, PLAYED_S) - SPEED.meanHz(fromS, fromS + TAKEN_S);
        assertThat(ours.hz + wander).isCloseTo(theirs.hz, within(ALONE_95 * Math.hypot(ours.hzError, theirs.hzError)));
        for (int i = 0; i < ours.ratios.length; i++) {
            assertThat(ours.ratios[i])
                    .isCloseTo(
                            theirs.ratios[i],
                            within(ALONE_95 * Math.hypot(ours.ratioErrors[i], theirs.ratioErrors[i])));
        }
        // And the truth that was put in lies within the error bars, four readings taken together.
        assertThat(ours.hz).isCloseTo(SPEED.meanHz(fromS, fromS + TAKEN_S), within(FOUR_AT_ONCE_95 * ours.hzError));
        double[] truth = {0.05 / 0.2, 0.08 / 0.2, 0.1 / 0.2};
        for (int i = 0; i < truth.length; i++) {
            assertThat(ours.ratios[i]).isCloseTo(truth[i], within(FOUR_AT_ONCE_95 * ours.ratioErrors[i]));
        }
    }

    /** Speed, and the ratios of 1x, twice blade pass and firing to blade pass, with their standard errors. */
    private static final class Read {
        private final double hz;
        private final double hzError;
        private final double[] ratios = new double[3];
        private final double[] ratioErrors = new double[3];

        Read(RunOrders orders) {
            Dwell dwell = orders.speed().main().orElseThrow();
            hz = dwell.propellerHz();
            hzError = dwell.standardErrorHz();
            DwellOrders read = orders.channels().get(0).dwells().get(0);
            Level.Measured bladePass = level(read, 3);
            double[] lines = {1, 6, FIRING};
            for (int i = 0; i < lines.length; i++) {
                Level.Measured line = level(read, lines[i]);
                ratios[i] = line.amplitude() / bladePass.amplitude();
                ratioErrors[i] = ratios[i]
                        * Math.hypot(
                                line.standardError() / line.amplitude(),
                                bladePass.standardError() / bladePass.amplitude());
            }
        }

        private static Level.Measured level(DwellOrders dwell, double order) {
            OrderReading reading = dwell.readings().stream()
                    .filter(r -> Math.abs(r.line().propellerOrder() - order) < 1e-6)
                    .findFirst()
                    .orElseThrow();
            return (Level.Measured) reading.level();
        }
    }

    private static Read read(Path file) {
        AnalysisRequest plain = AnalysisRequest.of(file, InstallationFile.read(INSTALLATION));
        return new Read(AnalyseRecording.analyse(new AnalysisRequest(
                        plain.file(),
                        plain.installation(),
                        plain.engineRpm(),
                        plain.propellerRpm(),
                        plain.tolerancePercent(),
                        List.of("left"),
                        plain.markChannel(),
                        plain.fullScale(),
                        plain.table(),
                        Optional.empty(),
                        List.of()))
                .orders());
    }

    private static void tell(Read ours, Read theirs, double fromS) throws IOException {
        StringBuilder text = new StringBuilder(String.format(
                Locale.ROOT,
                "taken from %.4f s on; speed %.5f +- %.5f Hz, of the file %.5f +- %.5f, truth %.5f%n",
                fromS,
                ours.hz,
                ours.hzError,
                theirs.hz,
                theirs.hzError,
                SPEED.meanHz(fromS, fromS + TAKEN_S)));
        for (int i = 0; i < 3; i++) {
            text.append(String.format(
                    Locale.ROOT,
                    "ratio %.6f +- %.6f, of the file %.6f +- %.6f%n",
                    ours.ratios[i],
                    ours.ratioErrors[i],
                    theirs.ratios[i],
                    theirs.ratioErrors[i]));
        }
        Files.writeString(Path.of("target", "known-run.txt"), text);
    }
}
