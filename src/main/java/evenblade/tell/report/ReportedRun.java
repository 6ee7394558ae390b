package evenblade.tell.report;

import evenblade.judge.comparison.MeasuredRun;
import evenblade.keep.job.Event;
import evenblade.measure.orders.RunOrders;
import java.util.List;
import java.util.Optional;

/**
 * A ground run of the job and what came of it.
 *
 * @param event as it stands in the record
 * @param name what the user calls it
 * @param measured its amplitudes; empty where there is no answer
 * @param orders the whole answer; empty where there is none
 * @param trouble why there is no answer, or why it isn't to be trusted; empty where all is well
 * @param figures pictures of it
 */
public record ReportedRun(
        Event event,
        String name,
        Optional<MeasuredRun> measured,
        Optional<RunOrders> orders,
        String trouble,
        List<ReportFigure> figures) {
    public ReportedRun {
        figures = List.copyOf(figures);
    }

    /** Whether there is no answer, or one that isn't to be trusted. */
    public boolean troubled() {
        return !trouble.isBlank();
    }
}
