package evenblade.face.app;

import evenblade.base.fact.Warning;
import evenblade.keep.job.EvidenceCheck.Thoroughness;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.JobRecord;
import java.nio.file.Path;
import java.util.List;

/** Reads a job record and looks at its files. */
public final class ShowJob {
    private ShowJob() {}

    /**
     * What a job says.
     *
     * @param record the record
     * @param warnings files that are missing, changed or in nobody's name
     */
    public record JobView(JobRecord record, List<Warning> warnings) {
        public JobView {
            warnings = List.copyOf(warnings);
        }
    }

    /**
     * Reads a job.
     *
     * @throws evenblade.base.problem.BadInput where there is none, or its record is damaged
     */
    public static JobView answer(Path job, Thoroughness thoroughness) {
        JobFolder folder = JobFolder.open(job);
        return new JobView(folder.record(), folder.check(thoroughness));
    }
}
