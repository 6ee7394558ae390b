package evenblade.judge.findings;

import static evenblade.judge.findings.EvidenceItem.running;

import evenblade.base.fact.Measure;
import evenblade.base.fact.Value.Quoted;
import evenblade.judge.tie.TieAnswer;
import evenblade.judge.tie.TrackTie;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** What the tie of 1× to track over all runs is worth to the rules about track. */
final class TieFeatures {
    private TieFeatures() {}

    /**
     * A piece from the run of the stage with most track.
     *
     * @param goes points where most of 1× surely goes with track
     * @param stays points where most of it surely doesn't
     */
    static List<EvidenceItem> of(Stage stage, int goes, int stays) {
        // Where blades were moved and nothing else, track has no share of its own to show.
        if (!(stage.tie().orElse(null) instanceof TieAnswer.Tied tied) || tied.follows() != TieAnswer.Follows.TRACK) {
            return List.of();
        }
        List<String> names = stage.runs().stream().map(run -> run.ref().name()).toList();
        Optional<TrackTie.Share> most = tied.tie().shares().stream()
                .filter(s -> names.contains(s.label()))
                .max(Comparator.comparingDouble(s -> s.withTrack().value()));
        if (most.isEmpty()) {
            return List.of();
        }
        TrackTie.Share share = most.get();
        int points = tied.tie().trackMatters() && share.withTrack().low() > 0.5 * share.measured()
                ? goes
                : share.withTrack().high() < 0.5 * share.measured() ? stays : 0;
        return points == 0
                ? List.of()
                : List.of(running(
                        points,
                        EvidenceRef.Whole.ALL_RUNS,
                        FindingFact.GOES_WITH_TRACK,
                        Measure.SHARE.of(share.withTrack().value() / share.measured()),
                        new Quoted(share.label()),
                        Measure.SHARE.of(share.withTrack().low() / share.measured()),
                        Measure.SHARE.of(share.withTrack().high() / share.measured())));
    }
}
