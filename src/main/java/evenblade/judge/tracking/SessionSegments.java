package evenblade.judge.tracking;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * Sessions parted where a blade or the hub itself was changed in between, as far as the marks show it.
 *
 * <p>Moving blades round the hub changes nothing in this sense; a shim or a dressed flange does. What was done is only
 * known in free words, so the marks decide: where something was entered as changed between two sessions, and the later
 * one fits what was before badly, a new spell begins.
 */
public final class SessionSegments {
    /**
     * Blades that sit where they sat, with something changed since: what was done must have been meant to move the tips, so
     * marks that chance brings once in a hundred cases are enough. Ours.
     */
    private static final double SAME_LAYOUT = 1e-2;

    /**
     * Blades moved round the hub are a change too, and one that parts nothing: it takes marks that chance brings once in ten
     * thousand cases, since a mark slipped by a careless hand clashes as well. Ours.
     */
    private static final double OTHER_LAYOUT = 1e-4;

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
        boolean stayed = before.get(before.size() - 1).layout().equals(next.layout());
        return SwapFit.of(together).scatter().chance() < (stayed ? SAME_LAYOUT : OTHER_LAYOUT);
    }
}
