package evenblade.judge.findings;

import evenblade.judge.tie.TieAnswer;
import evenblade.machine.installation.Installation;
import java.util.List;
import java.util.Optional;

/**
 * All that a job has measured.
 *
 * @param installation what it is about
 * @param runs in order of time
 * @param still what was read with the engine off
 * @param tie what the runs say about vibration and track together; empty where no run has a track to go with
 */
public record JobEvidence(
        Installation installation, List<RunEvidence> runs, StaticEvidence still, Optional<TieAnswer> tie) {
    public JobEvidence {
        runs = List.copyOf(runs);
    }
}
