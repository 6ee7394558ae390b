package evenblade.face.app;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenblade.judge.tie.JobTie;
import evenblade.judge.tie.Size;
import evenblade.judge.tie.TieAnswer;
import evenblade.judge.tie.TieRun;
import evenblade.judge.tie.TrackTie;
import evenblade.keep.job.MemoryFolder;
import evenblade.keep.practice.Fault;
import evenblade.keep.practice.PracticeInstallation;
import evenblade.keep.practice.PracticeJob;
import evenblade.machine.installation.HubCounting;
import evenblade.machine.installation.Installation;
import evenblade.tell.document.Face;
import evenblade.tell.document.Phrases;
import evenblade.tell.document.TieDocument;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** 1× against track on an invented job whose hub positions are counted against the rotation. */
class TieOfJobTest {
    @TempDir(factory = MemoryFolder.class)
    static Path dir;

    private static JobTie told;
    private static JobTie mistold;

    @BeforeAll
    static void aBladeOutOfTrack() throws IOException {
        Path job = dir.resolve("job");
        PracticeJob.of(countedAgainst(PracticeInstallation.geared()), List.of(Fault.BLADE_OUT_OF_TRACK), 88)
                .brief()
                .write(job);
        told = WeighFindings.weigh(job).tie().orElseThrow();
        Path record = job.resolve("job.json");
        Files.writeString(record, Files.readString(record).replace("against-rotation", "with-rotation"));
        mistold = WeighFindings.weigh(job).tie().orElseThrow();
    }

    private static Installation countedAgainst(Installation usual) {
        Installation.Propeller p = usual.propeller();
        return new Installation(
                usual.name(),
                usual.engine(),
                usual.reduction(),
                new Installation.Propeller(
                        p.blades(),
                        p.diameter(),
                        p.rotation(),
                        p.bladeMass(),
                        p.centreOfGravity(),
                        p.chord(),
                        Optional.of(HubCounting.AGAINST_ROTATION)),
                usual.limits());
    }

    private static TrackTie tie(JobTie answer) {
        return ((TieAnswer.Tied) answer.answer()).tie();
    }

    @Test
    void counted_as_entered_the_runs_fit_and_counted_the_other_way_they_dont() {
        assertThat(told.counting()).isEqualTo(HubCounting.AGAINST_ROTATION);
        assertThat(tie(told).trackMatters()).isTrue();
        assertThat(width(tie(told).left())).isLessThan(width(tie(mistold).left()));
    }

    private static double width(Size size) {
        return size.high() - size.low();
    }

    @Test
    void the_words_say_speed_channel_share_and_how_the_hub_is_counted() {
        List<String> words = TieDocument.sentences(told, Phrases.of(Face.PAPER));
        assertThat(words.get(0)).startsWith("Propeller 1× changes with track.").contains("m/s²");
        assertThat(words).anyMatch(w -> w.startsWith("At perfect track"));
        assertThat(words).anyMatch(w -> w.contains("engine rpm on channel"));
        assertThat(words).anyMatch(w -> w.contains("counted against the rotation, as entered"));
        assertThat(words)
                .anyMatch(w -> w.startsWith("Left out")
                        && w.contains("'cleaned': no tip marks before or after it without a change in between"));
        // Put right, the blades have sat in one order since.
        assertThat(words).anyMatch(w -> w.contains("Which layout would shake least isn't known yet"));
    }

    @Test
    void marks_taken_after_a_run_hold_for_it_as_long_as_nothing_was_changed() throws IOException {
        Path record = dir.resolve("job").resolve("job.json");
        String asWritten = Files.readString(record);
        try {
            moveMarksBehind(record, "as found", "2026-03-02T10:30:00Z");
            JobTie tie = WeighFindings.weigh(dir.resolve("job")).tie().orElseThrow();
            assertThat(tie.runs()).extracting(TieRun::label).contains("as found");
            assertThat(tie.leftOut()).extracting(JobTie.LeftOutRun::run).containsExactly("cleaned");
            assertThat(width(tie(tie).left())).isLessThan(2 * width(tie(told).left()));
        } finally {
            Files.writeString(record, asWritten);
        }
    }

    private static void moveMarksBehind(Path record, String run, String at) throws IOException {
        ObjectMapper mapper = new ObjectMapper();
        JsonNode job = mapper.readTree(Files.readString(record));
        ArrayNode events = (ArrayNode) job.get("events");
        int marks = indexOf(events, "kind", "tracking");
        ObjectNode moved = (ObjectNode) events.remove(marks);
        moved.put("at", at);
        events.insert(indexOf(events, "label", run) + 1, moved);
        Files.writeString(record, mapper.writeValueAsString(job));
    }

    private static int indexOf(ArrayNode events, String field, String value) {
        int i = 0;
        while (!events.get(i).path(field).asText().equals(value)) {
            i++;
        }
        return i;
    }
}
