package evenblade.keep.practice;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.face.app.AnalyseRecording;
import evenblade.face.app.AnalysisRequest;
import evenblade.machine.installation.Installation;
import evenblade.measure.speed.Dwell;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Whether the phone sample that README shows states its speed's error rightly: the same run made over and over, each time
 * with other wander, noise, jitter and lost rows. The clock of these recordings is true, so only the fit's own error counts.
 */
@Tag("long")
class ShowcaseSpeedTest {
    private static final int SEEDS = Integer.getInteger("showcase.seeds", 200);
    private static final double NORMAL_95 = 1.959964; // of any table of the normal distribution

    @TempDir
    Path folder;

    @Test
    void nineteenOfTwentyIntervalsHoldTheSpeedPutIn() throws IOException {
        Installation installation = PracticeInstallation.geared();
        PracticeRun sample = PracticeRun.of(Machine.healthy(installation, 41))
                .wandering(0.008)
                .withFault(Fault.MASS_IMBALANCE)
                .withFault(Fault.BLADE_OUT_OF_TRACK)
                .at(4800)
                .forSeconds(20);
        int found = 0;
        int held = 0;
        double squares = 0;
        for (int seed = 1; seed <= SEEDS; seed++) {
            PracticeRun run = sample.seeded(10_000 + seed);
            Path file = folder.resolve("run.csv");
            PhoneLogger.usual().record(run, file);
            Optional<Dwell> main = AnalyseRecording.analyse(AnalysisRequest.of(file, installation))
                    .orders()
                    .speed()
                    .main();
            Files.delete(file);
            if (main.isPresent()) {
                Dwell dwell = main.get();
                found++;
                double off = (dwell.propellerHz() - run.trueSpeed().meanHz(dwell.fromS(), dwell.toS()))
                        / dwell.standardErrorHz();
                held += Math.abs(off) <= NORMAL_95 ? 1 : 0;
                squares += off * off;
            }
        }
        System.out.printf(
                Locale.ROOT,
                "speed found in %d of %d, interval held in %d (%.1f %%), RMS error %.2f standard errors%n",
                found,
                SEEDS,
                held,
                100.0 * held / found,
                Math.sqrt(squares / found));
        assertThat(found).isEqualTo(SEEDS);
        // 95 % of 200 are 190 ± 3.1; three of these below and above.
        assertThat((double) held / found).isBetween(0.95 - 0.047, 0.95 + 0.047);
    }
}
