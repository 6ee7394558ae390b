package evenblade.face.app;

import evenblade.base.fact.Subject;
import evenblade.base.fact.Warning;
import evenblade.keep.job.Event;
import evenblade.keep.job.EvidenceCheck.Thoroughness;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.JobRecord;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Reads a job record and looks at its files. */
public final class ShowJob {
    private ShowJob() {}

    /**
     * What a job says.
     *
     * @param record the record
     * @param warnings files that are missing, changed or in nobody's name, and takes that aren't in the job
     * @param takes that aren't in the job
     */
    public record JobView(JobRecord record, List<Warning> warnings, List<JobTakes.Found> takes) {
        public JobView {
            takes = List.copyOf(takes);
            warnings = List.copyOf(warnings);
        }
    }

    /**
     * Reads a job.
     *
     * @throws evenblade.base.problem.BadInput where there is none, or its record is damaged
     */
    public static JobView show(Path job, Thoroughness thoroughness) {
        JobFolder folder = JobFolder.open(job);
        List<JobTakes.Found> takes = JobTakes.of(job);
        List<Warning> warnings = new ArrayList<>(folder.check(thoroughness));
        warnings.addAll(JobTakes.warnings(takes));
        return new JobView(folder.record(), warnings, takes);
    }

    /** What is to be told of entries just made: that the computer's clock stood behind an earlier one. */
    public static List<Warning> clockBehind(Path job, List<Event> made) {
        return JobFolder.open(job).clockBehind().stream()
                .filter(warning ->
                        made.stream().anyMatch(event -> warning.subject().equals(new Subject.Entry(event.id()))))
                .toList();
    }
}
