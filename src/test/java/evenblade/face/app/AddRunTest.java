package evenblade.face.app;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.base.units.SignalUnit;
import evenblade.base.units.ValueScale;
import evenblade.input.recording.TableReading;
import evenblade.input.recording.TableReading.ColumnReading;
import evenblade.input.recording.TableReading.TimeUnit;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.NewRun;
import evenblade.keep.job.RunSettings;
import evenblade.keep.practice.PracticeInstallation;
import evenblade.measure.orders.ChannelOrders;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@DisplayName("A run taken into a job")
class AddRunTest {
    @TempDir
    Path scratch;

    /** Counts of 0.01 m/s² and a clock in ms headed as if it were something else; invented. */
    private Path counts() throws IOException {
        StringBuilder rows = new StringBuilder("tick,a\n");
        for (int i = 0; i < 2000; i++) {
            rows.append(String.format(
                    Locale.ROOT, "%.1f,%d\n", 2.0 * i, Math.round(300 * Math.sin(2 * Math.PI * 32.9 * i / 500))));
        }
        return Files.writeString(scratch.resolve("counts.csv"), rows);
    }

    @Test
    @DisplayName("is read by every later analysis as was said when it was taken in")
    void theReadingSaidIsKept() throws IOException {
        Path job = scratch.resolve("job");
        StartJob.start(job, PracticeInstallation.geared(), Optional.empty());
        TableReading said = new TableReading(
                Optional.empty(),
                Optional.empty(),
                Optional.of("tick"),
                Optional.of(TimeUnit.MILLISECONDS),
                List.of(new ColumnReading(
                        "a",
                        Optional.of("across"),
                        Optional.of(new ValueScale(0.01, SignalUnit.METRE_PER_SECOND_SQUARED)))));
        AddRun.add(job, counts(), NewRun.labelled("as found", RunSettings.NONE.withTable(said)));

        ChannelOrders channel = AnalyseRecording.ofRun(job, "as found", Progress.SILENT)
                .orders()
                .channels()
                .get(0);
        assertThat(channel.channel()).isEqualTo("across");
        assertThat(channel.unit()).isEqualTo(SignalUnit.METRE_PER_SECOND_SQUARED);

        // What is kept for comparing depends on it too: another reading is another result.
        JobRuns runs = new JobRuns(JobFolder.open(job));
        var event = runs.record().run("as found");
        assertThat(runs.measured(event).channels().get(0).channel()).isEqualTo("across");
        assertThat(new JobRuns(JobFolder.open(job))
                        .measured(event)
                        .channels()
                        .get(0)
                        .unit())
                .isEqualTo(SignalUnit.METRE_PER_SECOND_SQUARED);
    }
}
