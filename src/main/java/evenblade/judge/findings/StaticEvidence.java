package evenblade.judge.findings;

import evenblade.base.units.Length;
import evenblade.judge.tracking.FaceRunOut;
import evenblade.judge.tracking.LimitCheck;
import evenblade.judge.tracking.PitchReadings;
import evenblade.judge.tracking.RunOutTest;
import evenblade.judge.tracking.TrackingAnalysis;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * What was read with the engine off.
 *
 * @param track tip marks, one entry for each spell without a change, in order of time
 * @param pitch blade angles, in order of time
 * @param runOut readings of the flange, in order of time
 */
public record StaticEvidence(List<Track> track, List<Pitch> pitch, List<RunOut> runOut) {
    /** Nothing read. */
    public static final StaticEvidence NONE = new StaticEvidence(List.of(), List.of(), List.of());

    public StaticEvidence {
        track = List.copyOf(track);
        pitch = List.copyOf(pitch);
        runOut = List.copyOf(runOut);
    }

    /**
     * Tip marks of one spell.
     *
     * @param analysis what they say together
     * @param checks of its last session, one per limit
     * @param runOutTest whether a measured run-out explains what stays on the hub, where that can be told
     */
    public record Track(TrackingAnalysis analysis, List<LimitCheck> checks, Optional<RunOutTest> runOutTest) {
        public Track {
            checks = List.copyOf(checks);
        }

        Instant from() {
            return analysis.sessions().get(0).at();
        }

        Instant lastAt() {
            return analysis.sessions().get(analysis.sessions().size() - 1).at();
        }

        /** Spread of the last session in mm. */
        double spreadMm() {
            return analysis.sessions().get(analysis.sessions().size() - 1).spreadMm();
        }
    }

    /**
     * Blade angles.
     *
     * @param readings the angles
     * @param checks one per limit
     */
    public record Pitch(PitchReadings readings, List<LimitCheck> checks) {
        public Pitch {
            checks = List.copyOf(checks);
        }
    }

    /**
     * A reading of the flange.
     *
     * @param reading the dial
     * @param atTip carried out to the tips, where the diameter is known
     * @param checks one per limit
     */
    public record RunOut(FaceRunOut reading, Optional<Length> atTip, List<LimitCheck> checks) {
        public RunOut {
            checks = List.copyOf(checks);
        }
    }
}
