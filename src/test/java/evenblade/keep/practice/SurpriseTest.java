package evenblade.keep.practice;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.base.problem.BadInput;
import evenblade.keep.job.JobFolder;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@DisplayName("A practice job that is a surprise")
class SurpriseTest {
    @TempDir
    Path folder;

    private static PracticeJob small(long seed) {
        return new PracticeJob(PracticeInstallation.geared(), List.of(), seed, 2, 500);
    }

    @Test
    @DisplayName("gives nothing away in names and texts, and says the truth once its seal is opened")
    void keepsItsSecret() throws Exception {
        Path job = PracticeJob.writeSurprise(folder.resolve("job"), small(3));
        StringBuilder open = new StringBuilder();
        try (Stream<Path> files = Files.walk(job)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                open.append(job.relativize(file)).append('\n');
                // Latin-1 reads every byte, so that words inside recordings are found too.
                open.append(Files.readString(file, StandardCharsets.ISO_8859_1));
            }
        }
        String all = open.toString();
        assertThat(all).contains("INVENTED for practice");
        for (Fault fault : Fault.values()) {
            // Every installation with a gear says "gear".
            if (fault != Fault.NONE && fault != Fault.GEAR) {
                assertThat(all.contains(fault.word() + "\"")).as(fault.word()).isFalse();
                for (String where : List.of("A", "B", "C", "1", "2", "3", "4")) {
                    assertThat(all.contains(fault.remedy(where)))
                            .as(fault.word())
                            .isFalse();
                }
                assertThat(all.contains(fault.description())).as(fault.word()).isFalse();
            }
        }
        assertThat(all).doesNotContain("ownTrackMm", "cylinderStrength", "put right", "seed 3");
        assertThat(JobFolder.open(job).record().name()).isEqualTo("Invented practice job: a surprise");
        SealedTruth truth = SealedTruth.read(job);
        assertThat(truth.faults()).isNotEmpty().allMatch(words -> !words.isBlank());
        assertThat(truth.truths()).hasSize(5).containsKey("run-1.truth.json");
        assertThat(truth.truths().get("run-1.truth.json")).contains("ownTrackMm");
    }

    @Test
    @DisplayName("differs in fault, blade and size from seed to seed, and is the same for the same seed")
    void changesWithTheSeed() {
        Machine machine = Machine.healthy(PracticeInstallation.geared(), 1);
        Set<Fault> faults = new HashSet<>();
        Set<Integer> places = new HashSet<>();
        Set<Double> sizes = new HashSet<>();
        boolean pair = false;
        for (long seed = 1; seed <= 60; seed++) {
            List<Ailment> drawn = Ailment.drawn(machine, seed);
            assertThat(drawn).isEqualTo(Ailment.drawn(machine, seed));
            pair |= drawn.size() == 2;
            drawn.forEach(each -> {
                faults.add(each.fault());
                places.add(each.place());
                sizes.add(each.scale());
            });
        }
        // Seven faults can be drawn; one misses 60 draws and more with a chance of (6/7)^60 = 1e-4 each.
        assertThat(faults).hasSize(7);
        // Cylinders have four places, blades three.
        assertThat(places).containsExactlyInAnyOrder(1, 2, 3, 4);
        assertThat(sizes).hasSizeGreaterThan(50).allMatch(scale -> scale >= 0.8 && scale <= 1.6);
        assertThat(pair).isTrue();
    }

    @Test
    @DisplayName("puts the fault where it says, as large as it says")
    void theWordsAreTrue() {
        Machine machine = Machine.healthy(PracticeInstallation.geared(), 1);
        Ailment track = new Ailment(Fault.BLADE_OUT_OF_TRACK, 3, 0.9);
        // 0.9 of 6 mm.
        assertThat(track.words(machine)).isEqualTo("the tip of blade C runs 5.4 mm ahead of the others");
        assertThat(track.in(machine).blade("C").trackM() - machine.blade("C").trackM())
                .isCloseTo(0.0054, Assertions.within(1e-12));
        Ailment cylinder = new Ailment(Fault.WEAK_CYLINDER, 4, 1.0);
        assertThat(cylinder.in(machine).drive().cylinderStrength().get(3)
                        / machine.drive().cylinderStrength().get(3))
                .isCloseTo(0.65, Assertions.within(1e-12));
        assertThat(cylinder.words(machine)).contains("cylinder 4", "35 % too little");
    }

    @Test
    @DisplayName("has no answer that fills the memory")
    void blownUp() throws IOException {
        new SealedTruth(List.of("x".repeat(20_000_000)), Map.of()).write(folder);
        assertThat(Files.size(folder.resolve(SealedTruth.FILE_NAME))).isLessThan(100_000);
        Assertions.assertThatThrownBy(() -> SealedTruth.read(folder)).isInstanceOf(BadInput.class);
    }

    @Test
    @DisplayName("has an answer to open only where one was sealed")
    void nothingSealed() {
        Assertions.assertThatThrownBy(() -> SealedTruth.read(folder))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("no sealed answer");
    }
}
