package evenblade.face.app;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.face.app.SeeEvidence.Page;
import evenblade.face.app.SeeEvidence.Sight;
import evenblade.judge.findings.EvidenceItem;
import evenblade.judge.findings.EvidenceRef;
import evenblade.judge.findings.Finding;
import evenblade.judge.findings.RunEvidence.Direction;
import evenblade.keep.job.Event;
import evenblade.keep.job.EvidenceCheck.Thoroughness;
import evenblade.keep.job.JobRecord;
import evenblade.keep.job.Kind;
import evenblade.tell.document.Face;
import evenblade.tell.document.Phrases;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@DisplayName("Evidence is seen")
class SeeEvidenceTest {
    @TempDir
    static Path scratch;

    private static JobRecord record;
    private static List<Finding> findings;

    @BeforeAll
    static void invent() throws IOException {
        Path job = scratch.resolve("job");
        MakePractice.make(job, List.of(), 1, Optional.empty());
        record = ShowJob.show(job, Thoroughness.QUICK).record();
        findings = WeighFindings.weigh(job).findings().list();
    }

    private static Sight sight(String start) {
        for (Finding finding : findings) {
            for (EvidenceItem piece : finding.speaksFor()) {
                if (Phrases.of(Face.WINDOW).text(piece.fact()).startsWith(start)) {
                    return SeeEvidence.of(record, piece.ref());
                }
            }
        }
        throw new AssertionError("no evidence starts with '" + start + "' in " + findings);
    }

    private static String label(Sight sight) {
        return sight.entry().flatMap(Event::label).orElse("");
    }

    @Test
    @DisplayName("at the tips where tip marks speak, at the last reading where angles do")
    void standing() {
        assertThat(sight("tip marks").page()).isEqualTo(Page.TRACK);
        Sight angles = sight("blade angles");
        assertThat(angles.page()).isEqualTo(Page.ENTRY);
        assertThat(angles.entry().map(Event::kind)).contains(Kind.PITCH);
    }

    @Test
    @DisplayName("in the run, the dwell and the direction that it names")
    void running() {
        Sight once = sight("propeller 1× is 0.9");
        assertThat(label(once)).isEqualTo("as found");
        assertThat(once.side()).isEqualTo(EvidenceRef.Side.ORDERS);
        assertThat(once.direction()).contains(Direction.ALONG);
        // The fastest dwell of the invented plan; the evidence gives the rpm that was measured.
        assertThat(once.engineRpm().orElseThrow()).isBetween(5200.0, 5400.0);
    }

    @Test
    @DisplayName("over all runs where the runs together speak")
    void overRuns() {
        assertThat(sight("over the runs").page()).isEqualTo(Page.ALL_RUNS);
    }

    @Test
    @DisplayName("in the run that is meant, whatever the runs are called; on the page of all runs where it is gone")
    void byIdNotByName() {
        Event run = record.standing(Kind.RUN).get(0);
        EvidenceRef speed = new EvidenceRef.Run(
                run.id(), EvidenceRef.Side.SPEED, OptionalDouble.empty(), Optional.empty(), Optional.empty());
        assertThat(SeeEvidence.of(record, speed).entry()).contains(run);
        assertThat(SeeEvidence.of(record, speed).side()).isEqualTo(EvidenceRef.Side.SPEED);
        EvidenceRef gone = new EvidenceRef.Run(
                "e999", EvidenceRef.Side.SPEED, OptionalDouble.empty(), Optional.empty(), Optional.empty());
        assertThat(SeeEvidence.of(record, gone).page()).isEqualTo(Page.ALL_RUNS);
    }
}
