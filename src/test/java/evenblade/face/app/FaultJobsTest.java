package evenblade.face.app;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.judge.findings.Cause;
import evenblade.judge.findings.Finding;
import evenblade.judge.findings.RunEvidence.RunRef;
import evenblade.keep.job.MemoryFolder;
import evenblade.keep.practice.Fault;
import evenblade.keep.practice.PracticeInstallation;
import evenblade.keep.practice.PracticeJob;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Whole practice jobs with one fault each, ten seeds: is the right finding first? */
@Tag("long")
class FaultJobsTest {
    private static final int SEEDS = 10;
    /** At least so many of ten have to come out right. */
    private static final int RIGHT = 9;
    /** Gear mesh lies at 1.4 to 1.9 kHz on this installation; everything else below 400 Hz. */
    private static final int GEAR_RATE_HZ = 4000;

    private static final int RATE_HZ = 1000;

    @TempDir(factory = MemoryFolder.class)
    Path dir;

    @ParameterizedTest
    @CsvSource({
        "NONE, NOTHING",
        "MASS_IMBALANCE, MASS",
        "BLADE_OUT_OF_TRACK, TRACK",
        "BLADE_OUT_OF_PITCH, PITCH",
        "FLANGE_RUN_OUT, FLANGE",
        "WEAK_CYLINDER, WEAK_CYLINDER",
        "CRANK_IMBALANCE, CRANK",
        "CARBURETTORS_OUT_OF_STEP, CARBURETTORS",
        "MOUNT_RESONANCE, RESONANCE",
        "LOOSE_MOUNT, LOOSE_MOUNT",
        "GEAR, DRIVE"
    })
    void theRightFindingComesFirstAndNoWrongOneIsConfident(Fault fault, Cause meant) throws IOException {
        int right = 0;
        int wrong = 0;
        int early = 0;
        double sureness = 0;
        StringBuilder told = new StringBuilder();
        for (long seed = 101; seed <= 100 + SEEDS; seed++) {
            Path job = dir.resolve("job-" + seed);
            int rate = fault == Fault.GEAR ? GEAR_RATE_HZ : RATE_HZ;
            new PracticeJob(PracticeInstallation.geared(), List.of(fault), seed, 6, rate).write(job);
            List<Finding> findings = WeighFindings.weigh(job).findings().list();
            right += findings.get(0).cause() == meant ? 1 : 0;
            // Once the fault is put right, 'nothing stands out' is the truth about the last runs.
            wrong += findings.stream()
                            .filter(f -> f.sureness().confident())
                            .anyMatch(f -> f.cause() != meant && f.cause() != Cause.NOTHING)
                    ? 1
                    : 0;
            sureness += findings.get(0).sureness().share();
            // The fault is put right before the fourth run, and not earlier.
            early += findings.get(0).cause() != Cause.NOTHING
                            && !findings.get(0).goneSince().map(RunRef::name).equals(Optional.of("put right"))
                    ? 1
                    : 0;
            findings.forEach(f -> told.append(f.cause())
                    .append(' ')
                    .append(Math.round(100 * f.sureness().share()))
                    .append(' '));
            told.append('\n');
            delete(job);
        }
        System.out.printf(
                Locale.ROOT,
                "| %s | %d of %d | %.0f %% | %d | %d |%n",
                fault.word(),
                right,
                SEEDS,
                100 * sureness / SEEDS,
                wrong,
                early);
        assertThat(right).as("right one first of %d:%n%s", SEEDS, told).isGreaterThanOrEqualTo(RIGHT);
        assertThat(wrong).as("confident and wrong:%n%s", told).isZero();
        assertThat(early).as("not told as gone since 'put right':%n%s", told).isLessThanOrEqualTo(SEEDS - RIGHT);
    }

    private static void delete(Path job) throws IOException {
        try (Stream<Path> all = Files.walk(job)) {
            for (Path file : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }
}
