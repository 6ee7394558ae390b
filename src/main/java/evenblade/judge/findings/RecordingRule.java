package evenblade.judge.findings;

import static evenblade.judge.findings.EvidenceItem.running;
import static evenblade.judge.findings.PropellerOnceFeatures.text;

import evenblade.input.recording.ChannelQuality;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Clipping, stuck values, gaps and a speed that isn't borne out: numbers that can't be built on. */
final class RecordingRule implements Rule {
    /** So many equal samples in a row no shaking engine makes. */
    private static final int STUCK = 50;

    private static final double LOST_SHARE = 0.01;

    @Override
    public Cause cause() {
        return Cause.RECORDING;
    }

    @Override
    public Optional<Assessment> weigh(Stage stage) {
        List<EvidenceItem> pieces = new ArrayList<>();
        double worst = 0;
        for (RunEvidence run : stage.runs()) {
            for (ChannelQuality quality : run.numbers().quality()) {
                boolean analysed = run.numbers().channels().stream()
                        .anyMatch(c -> c.channel().equals(quality.channel()));
                if (analysed && quality.clippedShare() > Thresholds.CLIPPED) {
                    worst = Math.max(worst, quality.clippedShare());
                    pieces.add(running(
                            6,
                            text(
                                    "%.2f %% of the samples of '%s' in '%s' lie flat at the ends of the range",
                                    100 * quality.clippedShare(), quality.channel(), run.name())));
                }
                if (analysed && quality.longestStuckRun() >= STUCK) {
                    worst = Math.max(worst, 1);
                    pieces.add(running(
                            5,
                            text(
                                    "%d equal samples in a row in '%s' of '%s'",
                                    quality.longestStuckRun(), quality.channel(), run.name())));
                }
            }
            run.numbers()
                    .stamps()
                    .filter(s -> s.lostS() > LOST_SHARE * run.numbers().durationS())
                    .ifPresent(s -> pieces.add(
                            running(5, text("%.2f s lost in %d gaps of '%s'", s.lostS(), s.gaps(), run.name()))));
            if (!run.numbers().confirmed()) {
                worst = Math.max(worst, 1);
                pieces.add(running(
                        6,
                        text(
                                "the speed of '%s' (%.0f s long) isn't borne out: %s",
                                run.name(),
                                run.numbers().durationS(),
                                run.numbers().speedDoubt().orElseThrow())));
            }
        }
        return pieces.isEmpty()
                ? Optional.empty()
                : Optional.of(new Assessment(
                        "The recordings of this stage point to trouble with sensor or recording; mend that before the"
                                + " machine is judged.",
                        pieces,
                        false,
                        worst,
                        stage.runs().stream().allMatch(r -> r.numbers().confirmed())
                                ? "Check range, gain, fixing and lead of the sensor, then repeat the run."
                                : "Add the run again with the speed read in the cockpit, or record a once-per-revolution"
                                        + " mark along."));
    }
}
