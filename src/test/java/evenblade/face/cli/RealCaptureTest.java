package evenblade.face.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.input.capture.SoundBench;
import evenblade.input.intake.Intake;
import evenblade.input.intake.IntakeOptions;
import evenblade.input.intake.RecordingReader;
import evenblade.input.recording.SampleStream;
import evenblade.input.recording.StreamSummary;
import evenblade.keep.job.Conditions.Condition;
import evenblade.keep.job.Detail;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.Kind;
import evenblade.keep.job.NewJob;
import evenblade.keep.practice.Noise;
import evenblade.keep.practice.SpeedProfile;
import evenblade.keep.practice.SyntheticRun;
import evenblade.keep.practice.WavFile;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RealCaptureTest {
    private static final Path INSTALLATION = Path.of("samples/geared-three-blade/installation.json");

    @TempDir
    Path folder;

    @BeforeEach
    void needsAnInput() {
        SoundBench.require();
    }

    private static SyntheticRun invented(double seconds) {
        SpeedProfile speed = SpeedProfile.steady(4800 / 60.0 / 51 * 21, seconds).wandering(0.004, 3);
        return SyntheticRun.at(speed)
                .withLine(1, 0.05, 20)
                .withLine(3, 0.2, 100)
                .withLine(6, 0.08, 40)
                .withLine(2 * 51 / 21.0, 0.1, 200)
                .withNoise(new Noise(0.005, 0))
                .withSeed(4);
    }

    private Path written(SyntheticRun run) throws IOException {
        Path file = folder.resolve("source.wav");
        double[] left = run.samples(run.evenClock(48_000));
        double[] right = new double[left.length];
        double amplitude = Math.pow(10, -6 / 20.0);
        for (int i = 0; i < right.length; i++) {
            right[i] = amplitude * Math.sin(2 * Math.PI * 997 * i / 48_000);
        }
        new WavFile(48_000, 16, 1, "invented").write(file, List.of(left, right));
        return file;
    }

    private static SampleStream sound(Path file) {
        return ((Intake.Streamed) RecordingReader.open(file, IntakeOptions.NONE)).sound();
    }

    /** More from the same input, with nothing said of it. */
    private Detail.Run nextRun(String seconds, String... more) {
        List<String> words = new ArrayList<>(List.of(
                "record",
                folder.resolve("job").toString(),
                "--seconds",
                seconds,
                "--rate",
                "48000",
                "--channels",
                "2"));
        words.addAll(List.of(more));
        CommandLineRun run = CommandLineRun.of(words.toArray(String[]::new));
        assertThat(run.status()).as(run.err()).isZero();
        assertThat(run.out().contains("As in 'first': full scale 50 m/s2; place \"gearbox top\"."))
                .as(run.out())
                .isEqualTo(more.length == 0);
        return (Detail.Run) JobFolder.open(folder.resolve("job")).record().standing(Kind.RUN).stream()
                .reduce((a, b) -> b)
                .orElseThrow()
                .detail();
    }

    @Test
    void aToneOfMinus6DecibelReadsMinus6DecibelAndTheJobKeepsTheRunWithItsSettings() throws Exception {
        Path source = written(invented(20));
        JobFolder.create(folder.resolve("job"), NewJob.fromFile("invented", INSTALLATION));
        Process player = SoundBench.play(source);
        CommandLineRun run;
        try {
            Thread.sleep(1500);
            run = CommandLineRun.of(
                    "record",
                    folder.resolve("job").toString(),
                    "--seconds",
                    "2",
                    "--label",
                    "first",
                    "--rate",
                    "48000",
                    "--channels",
                    "2",
                    "--full-scale",
                    "50 m/s2",
                    "--place",
                    "gearbox top");
        } finally {
            player.destroy();
        }

        assertThat(run.status()).as(run.err()).isZero();
        assertThat(run.out()).contains("The length asked for is reached: 2.00 s, no sample missing by the clock");
        JobFolder job = JobFolder.open(folder.resolve("job"));
        var event = job.record().events().get(0);
        Detail.Run kept = (Detail.Run) event.detail();
        assertThat(event.label()).contains("first");
        assertThat(kept.conditions().get(Condition.DEVICE).orElseThrow()).contains("48000 Hz, 2 channels, 24 bit");
        assertThat(folder.resolve("job/takes")).as("the first copy is gone").isEmptyDirectory();
        Detail.Run next = nextRun("1");
        assertThat(next.conditions().get(Condition.PLACE)).contains("gearbox top");
        assertThat(next.settings().fullScale()).contains("50 m/s2");
        assertThat(nextRun("2", "--afresh").conditions().get(Condition.PLACE)).isEmpty();
        StreamSummary summary = sound(job.locate(kept.file())).deliverTo((b, f) -> {});
        assertThat(summary.frames()).isEqualTo(96_000);
        assertThat(20 * Math.log10(summary.quality().get(1).peak())).isCloseTo(-6, within(0.02));
        assertThat(20 * Math.log10(Math.sqrt(2) * summary.quality().get(1).rms()))
                .isCloseTo(-6, within(0.02));
    }
}
