package evenblade.face.app;

import evenblade.base.fact.Code;
import evenblade.base.fact.Fact;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobRecord;
import evenblade.keep.job.Kind;
import evenblade.keep.job.WeightsOn;
import java.util.List;

/** The next useful step of a job, as far as its entries show it. */
public enum NextStep implements Code {
    MARK_TIPS,
    MAKE_FIRST_RUN,
    RUN_AFTER_CHANGE,
    LOOK_AT_BALANCE,
    REPEAT_RUN,
    COMPARE;

    /** The next step after the entries of a record. */
    public static NextStep of(JobRecord record) {
        List<Event> runs = record.standing(Kind.RUN);
        if (runs.isEmpty()) {
            return record.standing(Kind.TRACKING).isEmpty() ? MARK_TIPS : MAKE_FIRST_RUN;
        }
        Event lastRun = runs.get(runs.size() - 1);
        boolean changedSince =
                record.standing().stream().filter(Event::changesMachine).anyMatch(e -> record.before(lastRun, e));
        if (changedSince) {
            return RUN_AFTER_CHANGE;
        }
        if (record.standing(Kind.BALANCE).stream()
                .anyMatch(e -> WeightsOn.putOn(e).isPresent())) {
            return LOOK_AT_BALANCE;
        }
        return runs.size() == 1 ? REPEAT_RUN : COMPARE;
    }

    /** As a fact, to be put into words. */
    public Fact fact() {
        return Fact.of(this);
    }
}
