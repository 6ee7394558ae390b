package evenblade.judge.findings;

import static evenblade.judge.findings.EvidenceItem.running;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Value.Count;
import evenblade.base.fact.Value.Quoted;
import evenblade.input.recording.ChannelQuality;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Clipping, stuck values, gaps, sensors that rattle and a speed that isn't borne out: numbers that can't be built on. */
final class RecordingRule implements Rule {
    /** So many equal samples in a row no shaking engine makes. */
    private static final int STUCK = 50;

    private static final double LOST_SHARE = 0.01; // ours: a hundredth lost moves no amplitude

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
                            run.ref(EvidenceRef.Side.REMARKS),
                            FindingFact.CLIPPED,
                            Measure.SHARE.of(quality.clippedShare()),
                            new Quoted(quality.channel()),
                            run.ref().quoted()));
                }
                if (analysed && quality.longestStuckRun() >= STUCK) {
                    worst = Math.max(worst, 1);
                    pieces.add(running(
                            5,
                            run.ref(EvidenceRef.Side.REMARKS),
                            FindingFact.STUCK,
                            new Count(quality.longestStuckRun()),
                            new Quoted(quality.channel()),
                            run.ref().quoted()));
                }
            }
            run.numbers()
                    .stamps()
                    .filter(s -> s.lostS() > LOST_SHARE * run.numbers().durationS())
                    .ifPresent(s -> pieces.add(running(
                            5,
                            run.ref(EvidenceRef.Side.REMARKS),
                            FindingFact.LOST_IN_GAPS,
                            Measure.TIME.of(s.lostS()),
                            new Count(s.gaps()),
                            run.ref().quoted())));
            if (run.numbers().confirmed() && run.numbers().channels().isEmpty()) {
                worst = Math.max(worst, 1);
                pieces.add(running(
                        6,
                        run.ref(EvidenceRef.Side.REMARKS),
                        FindingFact.EVERY_SENSOR_RATTLES,
                        run.ref().quoted()));
            }
            if (!run.numbers().confirmed()) {
                worst = Math.max(worst, 1);
                pieces.add(running(
                        6,
                        run.ref(EvidenceRef.Side.SPEED),
                        FindingFact.SPEED_NOT_BORNE_OUT,
                        run.ref().quoted(),
                        Measure.TIME.of(run.numbers().durationS()),
                        run.numbers().speedDoubt().orElseThrow()));
            }
        }
        return pieces.isEmpty()
                ? Optional.empty()
                : Optional.of(new Assessment(
                        Fact.of(FindingFact.POINTS_TO_RECORDING),
                        pieces,
                        false,
                        worst,
                        Fact.of(
                                stage.runs().stream().allMatch(r -> r.numbers().confirmed())
                                        ? FindingFact.CHECK_SENSOR
                                        : FindingFact.ADD_WITH_SPEED)));
    }
}
