package evenblade.judge.findings;

import static evenblade.judge.findings.EvidenceItem.standing;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Value;
import evenblade.base.fact.Value.Amount;
import evenblade.base.fact.Value.Count;
import evenblade.judge.tracking.LimitCheck;
import evenblade.judge.tracking.TrackVerdict;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What the readings with the engine off say in a stage; shared by several rules. */
record StaticFeatures(Stage stage) {

    boolean tracked() {
        return stage.track().isPresent();
    }

    boolean pitchRead() {
        return stage.pitch().isPresent();
    }

    boolean runOutRead() {
        return stage.runOut().isPresent();
    }

    double spreadMm() {
        return stage.track().map(StaticEvidence.Track::spreadMm).orElse(0.0);
    }

    boolean trackOut() {
        return stage.track().map(StaticFeatures::trackOut).orElse(false);
    }

    /** Whether marks are beyond their limit, or the yardstick where there is none. */
    static boolean trackOut(StaticEvidence.Track track) {
        return beyond(track.checks(), track.spreadMm() > Thresholds.TRACK_MM);
    }

    boolean pitchOut() {
        return stage.pitch()
                .map(p -> beyond(p.checks(), p.readings().spreadDeg() > Thresholds.PITCH_DEG))
                .orElse(false);
    }

    boolean runOutOut() {
        return stage.runOut()
                .map(r -> beyond(
                        r.checks(),
                        r.atTip()
                                .map(tip -> tip.millimetres() > Thresholds.TIP_RUN_OUT_MM)
                                .orElse(false)))
                .orElse(false);
    }

    /** Whether track is within its limit and yet no fine one: it may carry part of the shaking. */
    boolean trackMiddling() {
        return tracked() && !trackOut() && spreadMm() > Thresholds.FINE_TRACK_MM;
    }

    /** Whether the blade angles are neither good nor bad. */
    boolean pitchMiddling() {
        return pitchRead() && !pitchOut() && stage.pitch().get().readings().spreadDeg() > Thresholds.FINE_PITCH_DEG;
    }

    /** Whether the run-out of the flange is neither good nor bad. */
    boolean runOutMiddling() {
        return runOutRead()
                && !runOutOut()
                && stage.runOut()
                        .get()
                        .atTip()
                        .map(tip -> tip.millimetres() > Thresholds.FINE_RUN_OUT_MM)
                        .orElse(true);
    }

    /** Whether track and blade angles are read and leave neither them nor the flange under suspicion. */
    boolean clears() {
        return tracked()
                && pitchRead()
                && !(trackOut() || pitchOut() || runOutOut())
                && !(trackMiddling() || pitchMiddling() || runOutMiddling());
    }

    /** Points of what is within its limit: none where it is no fine one, and a little suspicion where it counts as out. */
    private static int graded(boolean out, boolean middling, int ifOut, int ifFine) {
        return out ? ifOut : middling ? Integer.signum(ifOut) : ifFine;
    }

    /** Evidence of so many points; none where it weighs nothing. */
    private static List<EvidenceItem> weighed(int points, EvidenceRef ref, FindingFact code, Value... values) {
        return points == 0 ? List.of() : List.of(standing(points, ref, code, values));
    }

    /** Limits that apply decide; where there are none, the yardstick. */
    private static boolean beyond(List<LimitCheck> checks, boolean byYardstick) {
        boolean limited = checks.stream().anyMatch(LimitCheck::applies);
        return limited ? checks.stream().anyMatch(LimitCheck::beyond) : byYardstick;
    }

    /** The track against its limit or yardstick, weighed. */
    List<EvidenceItem> track(int out, int fine) {
        if (!tracked()) {
            return List.of();
        }
        StaticEvidence.Track track = stage.track().get();
        int points = graded(trackOut(), trackMiddling(), out, fine);
        Fact against = track.checks().isEmpty()
                ? Fact.of(
                        trackOut() ? FindingFact.BEYOND_PRACTICE : FindingFact.WITHIN_PRACTICE,
                        length(Thresholds.TRACK_MM))
                : track.checks().get(0).fact();
        return weighed(
                points,
                EvidenceRef.Whole.TIP_MARKS,
                FindingFact.MARKS_SPREAD_AGAINST,
                length(track.spreadMm()),
                against);
    }

    /** Where the track error goes when the blades are moved. */
    List<EvidenceItem> verdict(int blade, int position) {
        return stage.track()
                .map(t -> t.analysis().verdict())
                .filter(v -> trackOut() || trackMiddling())
                .map(v -> {
                    int points =
                            switch (v.kind()) {
                                case BLADE -> blade;
                                case POSITION -> position;
                                case BOTH -> Math.max(0, Math.min(blade, position));
                                case WITHIN_READING_ERROR, NOT_SEPARABLE, MARKS_CONTRADICT -> 0;
                            };
                    int worth = v.firm() ? points : points / 2;
                    return weighed(
                            worth,
                            EvidenceRef.Whole.TIP_MARKS,
                            FindingFact.MARKS_OVER_SESSIONS,
                            new Count(t().size()),
                            v.fact());
                })
                .orElse(List.of());
    }

    static Amount length(double millimetres) {
        return Measure.LENGTH.of(millimetres / 1000);
    }

    private List<?> t() {
        return stage.track().orElseThrow().analysis().sessions();
    }

    Optional<TrackVerdict> verdict() {
        return stage.track().map(t -> t.analysis().verdict());
    }

    /** Pitch against its limit or yardstick, weighed. */
    List<EvidenceItem> pitch(int out, int even) {
        if (!pitchRead()) {
            return List.of();
        }
        StaticEvidence.Pitch pitch = stage.pitch().get();
        int points = graded(pitchOut(), pitchMiddling(), out, even);
        Fact against = pitch.checks().isEmpty()
                ? Fact.of(
                        pitchOut() ? FindingFact.BEYOND_YARDSTICK : FindingFact.WITHIN_YARDSTICK,
                        Measure.ANGLE.of(Thresholds.PITCH_DEG))
                : pitch.checks().get(0).fact();
        return weighed(
                points,
                EvidenceRef.Whole.BLADE_ANGLES,
                FindingFact.ANGLES_SPREAD_AGAINST,
                Measure.ANGLE.of(pitch.readings().spreadDeg()),
                against);
    }

    /** The blade whose angle lies farthest off the mean, with by how much. */
    Map.Entry<String, Double> oddPitch() {
        return stage.pitch().orElseThrow().readings().deviationsDeg().entrySet().stream()
                .max(Map.Entry.comparingByValue((a, b) -> Double.compare(Math.abs(a), Math.abs(b))))
                .orElseThrow();
    }

    /** The flange's run-out carried to the tip, weighed. */
    List<EvidenceItem> runOut(int out, int fine) {
        if (!runOutRead()) {
            return List.of();
        }
        StaticEvidence.RunOut runOut = stage.runOut().get();
        int points = graded(runOutOut(), runOutMiddling(), out, fine);
        Fact tip = runOut.atTip()
                .map(length -> Fact.of(FindingFact.AT_TIPS, length(length.millimetres())))
                .orElse(Fact.of(FindingFact.TIPS_UNKNOWN));
        return weighed(
                points,
                EvidenceRef.Whole.FACE_RUN_OUT,
                FindingFact.FACE_RUNS_OUT,
                length(runOut.reading().total().millimetres()),
                length(runOut.reading().dialRadius().millimetres()),
                tip);
    }

    /** Run-out at the tip over the track spread; 0 where either isn't known. */
    double runOutShareOfSpread() {
        return stage.runOut()
                .flatMap(StaticEvidence.RunOut::atTip)
                .filter(tip -> spreadMm() > 0)
                .map(tip -> tip.millimetres() / spreadMm())
                .orElse(0.0);
    }
}
