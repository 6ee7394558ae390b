package evenblade.judge.tracking;

import evenblade.machine.installation.Limit;
import java.util.List;

/**
 * What size of track error matters: the limits that were entered for the track or, where there are none, usual figures.
 *
 * @param entered limits on track; may be empty
 */
public record TrackLimits(List<Limit> entered) {
    /** Nothing entered. */
    public static final TrackLimits USUAL = new TrackLimits(List.of());

    public TrackLimits {
        entered = entered.stream().filter(l -> l.what() == Limit.Subject.TRACK).toList();
    }

    /** Whether a session's marks lie beyond a limit entered or, with none that applies, beyond the most that is usual. */
    public boolean beyond(TrackingSession session) {
        List<LimitCheck> applying = LimitCheck.track(entered, session.marksMm()).stream()
                .filter(LimitCheck::applies)
                .toList();
        return applying.isEmpty()
                ? session.spreadMm() > UsualFigure.MOST_MM
                : applying.stream().anyMatch(LimitCheck::beyond);
    }

    /** An offset in mm below which a tip hardly matters: the smallest limit, or what is usually accepted. */
    double mattersMm() {
        return entered.stream()
                .mapToDouble(limit -> limit.value().millimetres())
                .min()
                .orElse(UsualFigure.ACCEPTED_MM);
    }
}
