package evenblade.keep.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import evenblade.keep.job.Conditions.Condition;
import evenblade.keep.job.Detail.Told;
import evenblade.keep.job.EvidenceCheck.Thoroughness;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@DisplayName("A later entry")
class LaterEntriesTest {
    @TempDir(factory = MemoryFolder.class)
    Path dir;

    private JobFolder job;

    @BeforeEach
    void begin() {
        job = InventedJobs.in(dir.resolve("job"));
    }

    private Event run(String label) throws IOException {
        RunSettings settings = RunSettings.NONE.withEngineRpm(2400).withFullScale("5 V");
        Conditions conditions = Conditions.NONE.with(Condition.PLACE, "cowling").with(Condition.WIND, "calm");
        return job.addRecording(
                InventedJobs.recording(dir, label + ".wav", 3000 + label.hashCode() % 100),
                new NewRun(Optional.empty(), Optional.of(label), "", settings, conditions));
    }

    private List<WarningCode> warned() {
        return job.check(Thoroughness.QUICK).stream().map(Warning::code).toList();
    }

    @Test
    @DisplayName("puts a run right, and the run's own entry stays as it was written")
    void amendsARun() throws IOException {
        Event run = run("before");
        Detail.Amendment amendment = new Detail.Amendment(
                run.id(),
                RunSettings.NONE.withFullScale("50 m/s2"),
                Conditions.NONE.with(Condition.PLACE, "engine mount").with(Condition.DIRECTION, "up"),
                List.of(new Told("level-low", "low")));
        Event later = job.append(Entry.of(amendment, "read the wrong line"));

        Detail.Run now = (Detail.Run) job.record().run("before").detail();
        assertThat(now.settings().engineRpm()).hasValue(2400);
        assertThat(now.settings().fullScale()).contains("50 m/s2");
        assertThat(now.conditions().entries())
                .containsExactlyInAnyOrderEntriesOf(
                        Map.of(Condition.PLACE, "engine mount", Condition.DIRECTION, "up", Condition.WIND, "calm"));
        assertThat(now.told()).extracting(Told::code).containsExactly("level-low");
        assertThat(job.record().events()).contains(run, later);

        job.strike(later.id(), "it was right");
        assertThat(job.record().run("before").detail()).isEqualTo(run.detail());
        assertThatThrownBy(() -> job.append(
                        Entry.of(new Detail.Amendment("e77", RunSettings.NONE, Conditions.NONE, List.of()), "")))
                .isInstanceOf(BadInput.class);
    }

    @Test
    @DisplayName("puts the installation right, and striking it out brings the first one back")
    void amendsTheInstallation() {
        Map<String, Object> other = Map.of(
                "engine", Map.of("cycle", "two-stroke", "cylinders", 2),
                "reduction", Map.of("ratio", 2.62),
                "propeller", Map.of("blades", 3));
        Event later = job.append(Entry.of(new Detail.NewInstallation(other), "the plate says so"));
        assertThat(job.record().installation().reduction().ratio()).isEqualTo(2.62);
        assertThat(job.record().installationAsWritten())
                .doesNotContainKey("ratio")
                .isNotEqualTo(other);

        job.strike(later.id(), "");
        assertThat(job.record().installation()).isEqualTo(InventedJobs.INSTALLATION);
    }

    @Test
    @DisplayName("keeps its place in the order of entering when the computer's clock went back, and that is told")
    void orderOfEnteringHolds() throws IOException {
        run("before");
        JobFolder behind =
                JobFolder.open(job.path(), Clock.fixed(Instant.parse("2031-05-04T07:00:00Z"), ZoneOffset.ofHours(2)));
        behind.append(Entry.correction("blade A 0.5° finer"));
        job.append(Entry.note("after"));

        JobRecord record = job.record();
        assertThat(record.events()).extracting(Event::id).containsExactly("e1", "e2", "e3");
        // The run and the note carry one time, the correction an earlier one.
        Map<String, Instant> moments = record.moments();
        assertThat(moments.get("e1")).isBefore(moments.get("e2"));
        assertThat(moments.get("e2")).isBefore(moments.get("e3"));
        assertThat(record.before(record.events().get(0), record.events().get(1)))
                .isTrue();
        assertThat(record.before(record.events().get(1), record.events().get(0)))
                .isFalse();
        assertThat(warned()).containsExactly(WarningCode.CLOCK_BEHIND_ENTRIES);
    }

    @Test
    @DisplayName("doesn't hide that a record was changed by hand")
    void changesByHandAreTold() throws IOException {
        job.append(Entry.correction("blade A 0.5° finer"));
        assertThat(warned()).isEmpty();
        Path file = job.path().resolve("job.json");
        Files.writeString(file, Files.readString(file).replace("0.5° finer", "0.6° finer"));
        assertThat(warned()).containsExactly(WarningCode.RECORD_CHANGED_BY_HAND);

        job.append(Entry.note("more"));
        assertThat(warned()).containsExactly(WarningCode.RECORD_CHANGED_BY_HAND);

        // Spaces and line ends say nothing.
        JobFolder other = InventedJobs.in(dir.resolve("other"));
        Path laidOut = other.path().resolve("job.json");
        Files.writeString(laidOut, Files.readString(laidOut).replace("\n", "\n  "));
        assertThat(other.check(Thoroughness.QUICK)).isEmpty();
    }
}
