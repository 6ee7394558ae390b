package evenblade.face.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.keep.job.Detail;
import evenblade.keep.job.Entry;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.Kind;
import evenblade.keep.job.NewJob;
import evenblade.keep.job.NewRun;
import evenblade.keep.practice.Fault;
import evenblade.keep.practice.PracticeInstallation;
import evenblade.keep.practice.PracticeJob;
import java.io.IOException;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Entries of one time, as a day without a clock time gives them, or two commands in one second: the order of entering
 * stands for the order of the work.
 */
@DisplayName("A job whose entries all have one time")
class OneTimeForAllTest {
    private static final String DAY = "2031-05-04";
    private static final OffsetDateTime NOON = OffsetDateTime.parse("2031-05-04T12:00:00Z");

    private static final Pattern TIME = Pattern.compile("2\\d{3}-\\d\\d-\\d\\dT\\S*");

    @TempDir
    Path dir;

    private String job;

    @BeforeEach
    void begin() {
        job = dir.resolve("job").toString();
    }

    private static CommandLineRun done(String... words) {
        CommandLineRun run = CommandLineRun.of(words);
        assertThat(run.err()).isEmpty();
        assertThat(run.status()).isZero();
        return run;
    }

    private void marks(String readings) {
        done("job", "tracking", job, "--layout", "1=A,2=B,3=C", "--readings", readings, "--at", DAY);
    }

    @Test
    @DisplayName("parts the tip marks where something was changed between them")
    void tipMarks() {
        done("job", "new", job, "--installation", "samples/geared-three-blade/installation.json");
        marks("0 mm,9 mm,0 mm");
        done("job", "correction", job, "blade B set back", "--at", DAY);
        marks("0 mm,0 mm,0 mm");
        marks("0 mm,0 mm,0.5 mm");

        String told = done("tracking", job, "--json").out();

        assertThat(told).contains("\"sessionsUsed\" : 2", "spread over 0.5 mm, which the reading error alone can do");
        assertThat(told).as("times are told as they were entered").doesNotContain("12:00:00.");
    }

    @Test
    @DisplayName("takes a new blade's letter only after the correction that brought it")
    void newBlade() {
        done("job", "new", job, "--installation", "samples/geared-three-blade/installation.json");
        done("job", "correction", job, "hub cleaned", "--at", DAY);
        marks("0 mm,1 mm,0 mm");
        String[] other = {"job", "tracking", job, "--layout", "1=A,2=B,3=D", "--readings", "0 mm,1 mm,0 mm", "--at", DAY
        };

        assertThat(CommandLineRun.of(other).err()).contains("blade D, which this hub never had");
        done("job", "correction", job, "blade C exchanged for D", "--at", DAY);
        done(other);
    }

    /** The same entries in the same order, all at one time. */
    private static void retold(Path from, Path to) {
        JobFolder first = JobFolder.open(from);
        JobFolder second = JobFolder.create(
                to,
                NewJob.of(
                        first.record().name(),
                        first.record().invented(),
                        first.record().installation()));
        for (Event event : first.record().inOrderOfEntering()) {
            Optional<OffsetDateTime> at = Optional.of(NOON);
            if (event.detail() instanceof Detail.Run run) {
                second.addRecording(
                        first.locate(run.file()),
                        new NewRun(at, event.label(), event.text(), run.settings(), run.conditions()));
            } else {
                second.append(new Entry(at, event.label(), event.text(), event.detail()));
            }
        }
    }

    /** Answers without times and without the name of the folder. */
    private static List<String> answers(Path folder) {
        return told(folder)
                .flatMap(run -> run.out().lines())
                .map(line -> TIME.matcher(line).replaceAll("TIME").replace(folder.toString(), "JOB"))
                .toList();
    }

    private static Stream<CommandLineRun> told(Path folder) {
        String job = folder.toString();
        List<Event> runs = JobFolder.open(folder).record().standing(Kind.RUN);
        return Stream.of(
                done("tracking", job, "--json"),
                done("findings", job, "--json"),
                done("trend", job, "--json"),
                done("compare", job, runs.get(0).id(), runs.get(runs.size() - 1).id(), "--json"),
                done("job", "next", job));
    }

    @ParameterizedTest
    @EnumSource(
            value = Fault.class,
            names = {"NONE", "BLADE_OUT_OF_TRACK", "BLADE_OUT_OF_PITCH", "FLANGE_RUN_OUT", "MASS_IMBALANCE"})
    @DisplayName("answers as the same job with the times of the work")
    @Tag("long")
    void wholeJobs(Fault fault) throws IOException {
        Path timed = dir.resolve("timed");
        new PracticeJob(PracticeInstallation.geared(), List.of(fault), 105, 6, 1000).write(timed);
        Path tied = dir.resolve("tied");
        retold(timed, tied);

        assertThat(JobFolder.open(tied).record().events())
                .extracting(Event::id)
                .containsExactlyElementsOf(JobFolder.open(timed).record().events().stream()
                        .map(Event::id)
                        .toList());
        assertThat(answers(tied)).isEqualTo(answers(timed));
    }
}
