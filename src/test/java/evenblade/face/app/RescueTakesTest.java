package evenblade.face.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import evenblade.keep.job.Conditions;
import evenblade.keep.job.Conditions.Condition;
import evenblade.keep.job.Detail;
import evenblade.keep.job.EvidenceCheck.Thoroughness;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.Kind;
import evenblade.keep.job.NewJob;
import evenblade.keep.job.NewRun;
import evenblade.keep.job.RunSettings;
import evenblade.keep.job.TakeNote;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@DisplayName("A take beside its job")
class RescueTakesTest {
    private static final Path INSTALLATION = Path.of("samples/electric-fan/installation.json");
    private static final Instant LONG_AGO = Instant.parse("2031-05-04T08:30:00Z");

    @TempDir
    Path folder;

    private Path job;

    @BeforeEach
    void begin() {
        job = folder.resolve("job");
        JobFolder.create(job, NewJob.fromFile("invented", INSTALLATION));
    }

    private Path take(String name, byte[] bytes) throws IOException {
        Path takes = Files.createDirectories(job.resolve("takes"));
        Path file = Files.write(takes.resolve(name), bytes);
        Files.setLastModifiedTime(file, FileTime.from(LONG_AGO));
        return file;
    }

    @Test
    @DisplayName("is seen in the job and rescued in one step, with what was said when it began")
    void isRescued() throws IOException {
        Path good = take("take-1.csv", Files.readAllBytes(Path.of("samples/electric-fan/run.csv")));
        new TakeNote(Optional.of("before"), "windy", RunSettings.NONE, Conditions.NONE.with(Condition.PLACE, "motor"))
                .write(good);
        Path noise = take("take-2.wav", new byte[] {7, 1, 2, 3});
        Path empty = take("take-3.wav", new byte[0]);

        ShowJob.JobView seen = ShowJob.show(job, Thoroughness.QUICK);
        assertThat(seen.takes()).extracting(JobTakes.Found::file).containsExactly(good, noise, empty);
        assertThat(seen.takes().get(0).seconds().orElseThrow()).isBetween(20.0, 40.0);
        assertThat(seen.warnings()).extracting(w -> w.code()).containsOnly(WarningCode.TAKE_LEFT_OVER);

        JobTakes.Rescued rescued = JobTakes.rescue(job);

        assertThat(rescued.events()).hasSize(2);
        assertThat(rescued.events().get(0).label()).contains("before");
        assertThat(rescued.events().get(0).at().toInstant()).isEqualTo(LONG_AGO);
        Detail.Run run = (Detail.Run) rescued.events().get(0).detail();
        assertThat(run.conditions().get(Condition.PLACE)).contains("motor");
        assertThat(rescued.warnings())
                .as("noise is evidence too, and harms nothing")
                .extracting(w -> w.code())
                .contains(WarningCode.TAKE_NOT_ANALYSED);
        assertThat(rescued.empty()).containsExactly(empty);
        assertThat(ShowJob.show(job, Thoroughness.EVERY_BYTE).takes()).hasSize(1);
        assertThat(Files.exists(TakeNote.of(good))).isFalse();
        assertThat(JobTakes.rescue(job).events()).isEmpty();
    }

    @Test
    @DisplayName("that can't be taken in doesn't hold up the others")
    void oneInTheWay() throws IOException {
        Path first = take("take-1.wav", new byte[] {7, 1, 2, 3});
        Files.writeString(TakeNote.of(first), "{ \"label\" : 5 }");
        take("take-2.wav", new byte[] {7, 1, 2, 4});

        assertThatThrownBy(() -> JobTakes.rescue(job))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("label");
        assertThat(JobFolder.open(job).record().standing(Kind.RUN)).hasSize(1);
        assertThat(ShowJob.show(job, Thoroughness.QUICK).takes())
                .extracting(JobTakes.Found::file)
                .containsExactly(first);
    }

    @Test
    @DisplayName("of lines keeps every byte, with the time of arrival of each line beside it")
    void linesAreKeptByteForByte() throws IOException {
        byte[] start = "time (s),x (g)\r\n".getBytes(StandardCharsets.US_ASCII);
        StringBuilder rows = new StringBuilder();
        for (int i = 0; i < 2000; i++) {
            rows.append(i / 400.0).append(',').append(Math.sin(0.5 * i)).append("\r\n");
        }
        byte[] noise = {'\n', (byte) 0xff, 0, (byte) 0x80, '\r', '7'};
        byte[] sent = new byte[start.length + rows.length() + noise.length];
        System.arraycopy(start, 0, sent, 0, start.length);
        System.arraycopy(rows.toString().getBytes(StandardCharsets.US_ASCII), 0, sent, start.length, rows.length());
        System.arraycopy(noise, 0, sent, start.length + rows.length(), noise.length);

        LiveRecording.Recorded recorded = RecordLines.prepare(new RecordLines.Request(
                        job,
                        new ByteArrayInputStream(sent),
                        "invented sensor",
                        OptionalDouble.empty(),
                        NewRun.labelled("lines", RunSettings.NONE),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty()))
                .record();

        JobFolder kept = JobFolder.open(job);
        Detail.Run run = (Detail.Run) recorded.event().orElseThrow().detail();
        assertThat(kept.locate(run.file())).hasBinaryContent(sent);
        assertThat(Files.readAllLines(kept.locate(run.arrivals().orElseThrow())))
                .hasSize(1 + 2001 + 3)
                .startsWith("line,arrived (s)", "1,0.000000");
        assertThat(ShowJob.show(job, Thoroughness.QUICK).takes()).isEmpty();
        assertThat(ShowJob.show(job, Thoroughness.EVERY_BYTE).warnings()).isEmpty();
    }
}
