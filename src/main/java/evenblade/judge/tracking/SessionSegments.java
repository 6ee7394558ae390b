package evenblade.judge.tracking;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * Sessions parted where a blade or the hub itself was changed in between, as far as the marks show it.
 *
 * <p>Moving blades round the hub changes nothing in this sense; a shim or a dressed flange does. What was done is only
 * known in free words, so the marks decide: where something was entered as changed between two sessions, and the later
 * one fits what was before so badly that chance would do it in fewer than 1 case in 10,000, a new spell begins.
 */
public final class SessionSegments {
    private static final double DISBELIEF = 1e-4; // ours: readings so unlikely mean that something was changed

    private SessionSegments() {}

    /**
     * Parts sessions.
     *
     * @param sessions at least one, in order of time
     * @param changes when something was changed, in any order
     * @return spells in order of time, none empty
     */
    public static List<List<TrackingSession>> part(List<TrackingSession> sessions, List<Instant> changes) {
        List<List<TrackingSession>> spells = new ArrayList<>();
        List<TrackingSession> open = new ArrayList<>();
        for (TrackingSession session : sessions) {
            if (!open.isEmpty()
                    && changedBetween(open.get(open.size() - 1), session, changes)
                    && clash(open, session)) {
                spells.add(List.copyOf(open));
                open = new ArrayList<>();
            }
            open.add(session);
        }
        spells.add(List.copyOf(open));
        return List.copyOf(spells);
    }

    private static boolean changedBetween(TrackingSession one, TrackingSession other, List<Instant> changes) {
        return changes.stream().anyMatch(at -> at.isAfter(one.at()) && !at.isAfter(other.at()));
    }

    private static boolean clash(List<TrackingSession> before, TrackingSession next) {
        List<TrackingSession> together = new ArrayList<>(before);
        together.add(next);
        return SwapFit.of(together).scatter().chance() < DISBELIEF;
    }
}
