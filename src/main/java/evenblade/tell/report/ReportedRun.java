package evenblade.tell.report;

import evenblade.judge.comparison.MeasuredRun;
import evenblade.keep.job.Event;
import java.util.Optional;

/**
 * A ground run of the job and what came of it.
 *
 * @param event as it stands in the record
 * @param name what the user calls it
 * @param measured its amplitudes; empty where there is no answer
 * @param part the run in words and pictures
 */
public record ReportedRun(Event event, String name, Optional<MeasuredRun> measured, RunPart part) {}
