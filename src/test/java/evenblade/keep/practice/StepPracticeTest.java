package evenblade.keep.practice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import evenblade.base.problem.BadInput;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.Kind;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@DisplayName("A practice job that goes step by step")
class StepPracticeTest {
    /** The first seed whose machine has one fault that belongs to a blade. */
    private static final long SEED = firstWith(Fault.BLADE_OUT_OF_TRACK);

    @TempDir
    Path folder;

    private static long firstWith(Fault fault) {
        for (long seed = 1; ; seed++) {
            List<Ailment> drawn =
                    Ailment.drawn(Machine.healthy(PracticeInstallation.geared(), Seeds.part(seed, 0)), seed);
            if (drawn.size() == 1 && drawn.get(0).fault() == fault) {
                return seed;
            }
        }
    }

    private Event take(Path job, String step) throws IOException {
        return StepPractice.open(job).take(PracticeStep.read(step));
    }

    @Test
    @DisplayName("holds nothing but a note until something is asked for, and gives nothing away")
    void nothingUnasked() throws IOException {
        Path job = folder.resolve("job");
        StepPractice.begin(job, PracticeInstallation.geared(), SEED);
        assertThat(JobFolder.open(job).record().events())
                .extracting(Event::kind)
                .containsExactly(Kind.NOTE);
        assertThat(Files.readString(job.resolve("steps.json")) + Files.readString(job.resolve("job.json")))
                .doesNotContain(Fault.BLADE_OUT_OF_TRACK.word(), String.valueOf(SEED) + "\n");
        assertThat(take(job, "tracking").kind()).isEqualTo(Kind.TRACKING);
        assertThat(take(job, "pitch").kind()).isEqualTo(Kind.PITCH);
    }

    @Test
    @DisplayName("puts right what is wrong, counts a repair of what is in order, and adds up the money")
    void scores() throws IOException {
        Path job = folder.resolve("job");
        StepPractice.begin(job, PracticeInstallation.geared(), SEED);
        Machine healthy = Machine.healthy(PracticeInstallation.geared(), Seeds.part(SEED, 0));
        int place = Ailment.drawn(healthy, SEED).get(0).place();
        String culprit = healthy.blades().get(place - 1).name();
        String other = healthy.blades().get(place % healthy.blades().size()).name();
        take(job, "tracking");
        take(job, "move");
        take(job, "shim=" + other);
        assertThat(StepPractice.open(job).score().left()).hasSize(1);
        take(job, "shim=" + culprit);
        take(job, "shim=" + culprit);
        StepPractice.Score score = StepPractice.open(job).score();
        // 5 + 20 + 3 × 40, see PracticeStep.
        assertThat(score.money()).isEqualTo(145);
        assertThat(score.changes()).isEqualTo(4);
        assertThat(score.left()).isEmpty();
        assertThat(score.wrong())
                .containsExactly("blade " + other + " shimmed into track", "blade " + culprit + " shimmed into track");
    }

    @Test
    @DisplayName("refuses a step that it doesn't know, a blade that isn't there, and a job of another kind")
    void refuses() throws IOException {
        Path job = folder.resolve("job");
        StepPractice.begin(job, PracticeInstallation.geared(), SEED);
        assertThatExceptionOfType(BadInput.class).isThrownBy(() -> take(job, "hammer"));
        assertThatExceptionOfType(BadInput.class).isThrownBy(() -> take(job, "shim"));
        assertThatExceptionOfType(BadInput.class).isThrownBy(() -> take(job, "run=B"));
        assertThatExceptionOfType(BadInput.class).isThrownBy(() -> take(job, "shim=Z"));
        assertThatExceptionOfType(BadInput.class).isThrownBy(() -> StepPractice.open(folder));
    }
}
