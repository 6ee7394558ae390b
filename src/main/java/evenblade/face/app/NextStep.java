package evenblade.face.app;

import evenblade.keep.job.Event;
import evenblade.keep.job.JobRecord;
import evenblade.keep.job.Kind;
import evenblade.keep.job.WeightsOn;
import java.util.List;

/**
 * The next useful step of a job, as far as its entries show it.
 *
 * @param text one sentence
 * @param action what it asks for
 */
public record NextStep(String text, Action action) {
    /** What can be done next. */
    public enum Action {
        MARK_TIPS,
        ADD_RUN,
        WRITE_CORRECTION,
        COMPARE,
        BALANCE
    }

    /** The next step after the entries of a record. */
    public static NextStep of(JobRecord record) {
        List<Event> standing = record.standing();
        if (record.standing(Kind.TRACKING).isEmpty()
                && record.standing(Kind.RUN).isEmpty()) {
            return new NextStep("Mark the tips against a block before the first run.", Action.MARK_TIPS);
        }
        if (record.standing(Kind.RUN).isEmpty()) {
            return new NextStep("Make the first ground run, or add its recording.", Action.ADD_RUN);
        }
        Event lastRun = last(record.standing(Kind.RUN));
        boolean changedSince = standing.stream()
                .filter(Event::changesMachine)
                .anyMatch(e -> e.at().isAfter(lastRun.at()));
        if (changedSince) {
            return new NextStep("Something was changed: run the same speeds again and add the run.", Action.ADD_RUN);
        }
        if (record.standing(Kind.BALANCE).stream()
                .anyMatch(e -> WeightsOn.putOn(e).isPresent())) {
            return new NextStep(
                    "Look which balance weight the runs with and without weights call for.", Action.BALANCE);
        }
        if (record.standing(Kind.RUN).size() == 1) {
            return new NextStep(
                    "Run once more with nothing changed: it shows how far readings scatter by themselves.",
                    Action.ADD_RUN);
        }
        return new NextStep("Compare the last two runs, then change one thing and write it down.", Action.COMPARE);
    }

    private static Event last(List<Event> events) {
        return events.get(events.size() - 1);
    }
}
