package evenblade.judge.tracking;

import evenblade.base.units.Length;
import evenblade.machine.installation.Installation;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * All static readings of a job, and what they say together.
 *
 * @param job its name
 * @param invented whether it was made up for practice
 * @param installation with its limits
 * @param sessions every session with its limits, in order of time
 * @param spells what the sessions say together, one answer for each stretch without a change; the last one
 *     counts now
 * @param runOuts readings of the flange, in order of time
 * @param runOutTest whether the last of them explains what stays on the hub, where that can be told
 * @param pitches blade angles, in order of time
 * @param couple rough size of what the track turns at the engine's highest speed, where mass and speed are known
 * @param thrust rough size of what the blade angles read last do to the thrust at that speed, where chord and speed
 *     are known
 */
public record StaticSide(
        String job,
        boolean invented,
        Installation installation,
        List<MarkedTips> sessions,
        List<TrackingAnalysis> spells,
        List<DialReading> runOuts,
        Optional<RunOutTest> runOutTest,
        List<BladeAngles> pitches,
        Optional<CoupleEstimate> couple,
        Optional<ThrustOffsetEstimate> thrust) {
    public StaticSide {
        sessions = List.copyOf(sessions);
        spells = List.copyOf(spells);
        runOuts = List.copyOf(runOuts);
        pitches = List.copyOf(pitches);
    }

    /** When a session was, as entered. */
    public Instant at(TrackingSession session) {
        return sessions.stream()
                .filter(tips -> tips.session().equals(session))
                .findFirst()
                .map(MarkedTips::at)
                .orElse(session.at());
    }

    /** What counts now; there is at least one session. */
    public TrackingAnalysis now() {
        return spells.get(spells.size() - 1);
    }

    /**
     * One session held against the limits.
     *
     * @param event its id in the record
     * @param at when, as entered; the time of the session itself only keeps it in order
     * @param session the marks
     * @param checks one per limit on track
     */
    public record MarkedTips(String event, Instant at, TrackingSession session, List<LimitCheck> checks) {
        public MarkedTips {
            checks = List.copyOf(checks);
        }

        /** Usual figures to stand beside the marks where no limit was entered; none where one was. */
        public List<UsualFigure> usual() {
            return checks.isEmpty() ? UsualFigure.of(session) : List.of();
        }

        /** Whether all limits that apply hold; nothing where none does. */
        public Optional<Boolean> withinLimit() {
            List<LimitCheck> applying =
                    checks.stream().filter(LimitCheck::applies).toList();
            return applying.isEmpty()
                    ? Optional.empty()
                    : Optional.of(applying.stream().noneMatch(LimitCheck::beyond));
        }
    }

    /**
     * A reading of the flange.
     *
     * @param event its id in the record
     * @param at when, as entered; the time of the reading itself only keeps it in order
     * @param reading the dial
     * @param atTip carried out to the tips, where the diameter is known
     * @param checks one per limit on run-out
     */
    public record DialReading(
            String event, Instant at, FaceRunOut reading, Optional<Length> atTip, List<LimitCheck> checks) {
        public DialReading {
            checks = List.copyOf(checks);
        }
    }

    /**
     * Blade angles held against the limits.
     *
     * @param event its id in the record
     * @param at when, as entered; the time of the readings themselves only keeps them in order
     * @param readings the angles
     * @param checks one per limit on pitch
     */
    public record BladeAngles(String event, Instant at, PitchReadings readings, List<LimitCheck> checks) {
        public BladeAngles {
            checks = List.copyOf(checks);
        }
    }
}
