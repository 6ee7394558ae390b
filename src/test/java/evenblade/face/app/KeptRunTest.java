package evenblade.face.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.Kind;
import evenblade.keep.practice.Fault;
import evenblade.keep.practice.PracticeInstallation;
import evenblade.keep.practice.PracticeJob;
import evenblade.machine.installation.Installation;
import evenblade.measure.orders.RunOrders;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@DisplayName("An analysed run that was kept")
class KeptRunTest {
    @TempDir
    static Path temp;

    private static AnalysedRun fresh;
    private static Installation installation;

    @BeforeAll
    static void analyse() throws IOException {
        installation = PracticeInstallation.geared();
        PracticeJob.of(installation, List.of(Fault.BLADE_OUT_OF_TRACK), 4).write(temp.resolve("job"));
        JobFolder job = JobFolder.open(temp.resolve("job"));
        Event run = job.record().standing(Kind.RUN).get(0);
        fresh = AnalysedRun.of(AnalyseRecording.analyse(new JobRuns(job).request((Detail.Run) run.detail())), true);
    }

    private static AnalysedRun again() {
        return KeptRun.read(KeptRun.written(fresh), fresh.orders().source().file(), installation)
                .orElseThrow();
    }

    @Test
    @DisplayName("gives every measured figure to the last bit")
    void figuresAreTheSame() {
        RunOrders before = fresh.orders();
        RunOrders after = again().orders();
        assertThat(after.channels()).isEqualTo(before.channels());
        assertThat(after.quality()).isEqualTo(before.quality());
        assertThat(after.stamps()).isEqualTo(before.stamps());
        assertThat(after.warnings()).isEqualTo(before.warnings());
        assertThat(after.source()).isEqualTo(before.source());
        assertThat(after.ratio()).isEqualTo(before.ratio());
        assertThat(after.speed().dwells()).isEqualTo(before.speed().dwells());
        assertThat(after.speed().main()).isEqualTo(before.speed().main());
        assertThat(after.speed().origin()).isEqualTo(before.speed().origin());
    }

    @Test
    @DisplayName("has a spectrum and a turn of every channel in every dwell, the longest first")
    void everyDwellCanBeDrawn() {
        AnalysedRun after = again();
        // Three directions and three dwells, by the definition of a practice run.
        assertThat(after.views()).hasSize(9).allSatisfy(view -> assertThat(view.turn())
                .isPresent());
        assertThat(after.main()).allSatisfy(view -> assertThat(view.dwell())
                .isEqualTo(after.orders().speed().main()));
        for (int i = 0; i < 9; i++) {
            ChannelView one = fresh.views().get(i);
            ChannelView other = after.views().get(i);
            assertThat(other.dwell()).isEqualTo(one.dwell());
            assertThat(other.spectrum().values().size())
                    .isEqualTo(one.spectrum().values().size());
            for (int k = 0; k < one.spectrum().values().size(); k += 97) {
                // Single precision: 24 bits.
                assertThat((float) other.spectrum().values().at(k))
                        .isEqualTo((float) one.spectrum().values().at(k));
            }
        }
    }

    @Test
    @DisplayName("has its speed at even steps, within what a picture shows")
    void speedIsNearlyTheSame() {
        double from = fresh.orders().speed().track().fromS();
        double to = fresh.orders().speed().track().toS();
        for (double t = from; t < to; t += (to - from) / 317) {
            // Straight lines over 27 ms; the run climbs about 500 engine rpm in 4 s, its bends are rounder than that.
            assertThat(again().orders().speed().track().propellerHzAt(t))
                    .isCloseTo(fresh.orders().speed().track().propellerHzAt(t), withinPercentage(0.05));
        }
    }

    @Test
    @DisplayName("cut short or of another form is none")
    void damagedIsNone() {
        byte[] whole = KeptRun.written(fresh);
        Path file = fresh.orders().source().file();
        for (int share = 0; share < 20; share++) {
            assertThat(KeptRun.read(Arrays.copyOf(whole, whole.length * share / 20), file, installation))
                    .isEmpty();
        }
    }
}
