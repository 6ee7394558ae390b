package evenblade.face.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.keep.job.Conditions;
import evenblade.keep.job.Conditions.Condition;
import evenblade.keep.job.Entry;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.NewJob;
import evenblade.keep.job.NewRun;
import evenblade.keep.job.RunSettings;
import evenblade.keep.practice.Noise;
import evenblade.keep.practice.PracticeInstallation;
import evenblade.keep.practice.PracticeStep;
import evenblade.keep.practice.SpeedProfile;
import evenblade.keep.practice.StepPractice;
import evenblade.keep.practice.SyntheticRun;
import evenblade.keep.practice.WavFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@DisplayName("job next, and the words of a job,")
class JobNextCommandTest {
    private static final OffsetDateTime MORNING = OffsetDateTime.parse("2026-05-04T09:00:00+02:00");

    @TempDir
    Path folder;

    private Path job;
    private JobFolder record;

    @BeforeEach
    void begin() {
        job = folder.resolve("job 1");
        record = JobFolder.create(job, NewJob.of("Invented job", true, PracticeInstallation.geared()));
    }

    private String next() {
        CommandLineRun run = CommandLineRun.of("job", "next", job.toString());
        assertThat(run.err()).isEmpty();
        assertThat(run.status()).isZero();
        return run.out();
    }

    @Test
    @DisplayName("an empty job asks for tip marks, with the caution and a line to type for its three blades")
    void marksFirst() {
        assertThat(next())
                .contains("Next: Mark the tips")
                .contains("Type: evenblade job tracking \"" + job + "\" --layout 1=A,2=B,3=C --readings \"12.5 mm,12.5"
                        + " mm,12.5 mm\"")
                .contains("ignition off");
    }

    @Test
    @DisplayName("after a change asks for a run, measured like the one before")
    void runsAlike() throws Exception {
        Path recording = Files.write(folder.resolve("a.wav"), new byte[] {1, 2, 3});
        record.addRecording(
                recording,
                new NewRun(
                        Optional.of(MORNING),
                        Optional.of("as found"),
                        "",
                        RunSettings.NONE.withMarkChannel("4").withFullScale("50 m/s2"),
                        Conditions.NONE
                                .with(Condition.PLACE, "top of the gearbox")
                                .with(Condition.WIND, "3 m/s")));
        record.append(Entry.correction("Blade B shimmed.").at(MORNING.plusHours(1)));
        assertThat(next())
                .contains("Something was changed")
                .contains(
                        "RECORDING --label NAME --mark-channel 4 --full-scale \"50 m/s2\" --place \"top of the gearbox\"")
                .doesNotContain("--wind");
    }

    private static double[] shaking(double once, int seed) {
        SyntheticRun run = SyntheticRun.at(SpeedProfile.steady(33, 20))
                .withLine(1, once, 20)
                .withLine(3, 0.1, 100)
                .withLine(6, 0.05, 40)
                .withLine(51.0 / 21, 0.02, 10)
                .withLine(2 * 51.0 / 21, 0.15, 200)
                .withLine(4 * 51.0 / 21, 0.05, 70)
                .withNoise(new Noise(0.004, 0))
                .withSeed(seed);
        return run.samples(run.evenClock(4000));
    }

    /** 1× large across, marks within their limit in one layout: what tells mass from track is another layout. */
    @Test
    @DisplayName(
            "where the findings ask for tips in a second layout, the line to type marks them, every blade moved on")
    void theLineToTypeDoesWhatTheStepAsks() throws Exception {
        CommandLineRun.of(
                "job", "tracking", job.toString(), "--layout", "1=A,2=B,3=C", "--readings", "10 mm,10.4 mm,10.1 mm");
        for (int seed = 1; seed <= 2; seed++) {
            Path recording = folder.resolve("run-" + seed + ".wav");
            new WavFile(4000, 16, 1, "invented").write(recording, List.of(shaking(0.4, seed), shaking(0.1, seed + 2)));
            record.addRecording(
                    recording,
                    new NewRun(
                            Optional.empty(),
                            Optional.of("run " + seed),
                            "",
                            RunSettings.NONE.withFullScale("10 m/s2"),
                            Conditions.NONE.with(Condition.DIRECTION, "across, along")));
        }
        assertThat(next().replaceAll("\\s+", " "))
                .contains("Mark the tips in two layouts")
                .contains("--layout 1=C,2=A,3=B --readings");
    }

    @Test
    @DisplayName(
            "a run that shows no speed, and one that can't be read, are named with why; the step doesn't rest on them")
    void namesWhatIsLeftOut() throws Exception {
        Random chance = new Random(4); // any noise will do: none of it is a line
        double[] hiss = chance.doubles(20_000, -0.1, 0.1).toArray();
        Path recording = folder.resolve("hiss.wav");
        new WavFile(4000, 16, 1, "invented").write(recording, List.of(hiss));
        record.addRecording(recording, NewRun.labelled("hiss", RunSettings.NONE));
        assertThat(next().replaceAll("\\s+", " "))
                .contains("Next: Run once more")
                .contains("! run 'hiss' is left out: no line of this machine stands out of the noise [run-left-out]");
        Path broken = Files.write(folder.resolve("a.wav"), new byte[] {1, 2, 3});
        record.addRecording(broken, NewRun.labelled("broken", RunSettings.NONE));
        assertThat(next().replaceAll("\\s+", " "))
                .contains("! run 'broken' is left out: ", "! run 'hiss' is left out: ");
    }

    @Test
    @DisplayName("a machine of practice that is measured on demand asks for a step, not for readings of one's own")
    void practised() throws Exception {
        job = folder.resolve("practised");
        StepPractice.begin(job, PracticeInstallation.geared(), 5);
        assertThat(next())
                .contains("Type: evenblade practice " + job + " --step tracking")
                .doesNotContain("examples");
        StepPractice.open(job).take(PracticeStep.read("tracking"));
        assertThat(next()).contains(" --step run");
    }

    @Test
    @DisplayName("particulars are kept, shown and taken away, and an unknown unit is refused in one line")
    void particulars() {
        String dir = job.toString();
        assertThat(CommandLineRun.of("job", "particulars", dir, "--owner", "N. N.", "--units", "inch")
                        .out())
                .isEqualTo("Owner: N. N.\nUnits of length: inch\n");
        assertThat(CommandLineRun.of("job", "particulars", dir, "--owner", "").out())
                .isEqualTo("Units of length: inch\n");
        CommandLineRun run = CommandLineRun.of("job", "particulars", dir, "--units", "cubit");
        assertThat(run.status()).isEqualTo(1);
        assertThat(run.err()).isEqualTo("evenblade: --units: 'cubit', expected one of metric, inch\n");
    }

    @Test
    @DisplayName("units asked for once stand in the next answers, until others are asked for")
    void unitsAreKept() {
        String dir = job.toString();
        CommandLineRun.of("job", "tracking", dir, "--layout", "1=A,2=B,3=C", "--readings", "10 mm,12 mm,11 mm");
        assertThat(CommandLineRun.of("tracking", dir).out()).contains("2.00 mm (");
        assertThat(CommandLineRun.of("tracking", dir, "--units", "inch").out()).contains(" in (2.00 mm)");
        assertThat(CommandLineRun.of("tracking", dir).out()).contains(" in (2.00 mm)");
        assertThat(CommandLineRun.of("tracking", dir, "--units", "metric").out())
                .contains("2.00 mm (");
    }
}
