package evenblade.face.app;

import evenblade.keep.job.Detail;
import evenblade.keep.job.JobFolder;
import java.nio.file.Path;

/** Answers what shook in one run of a job, with the options it was added with. */
public final class AnalyseRun {
    private AnalyseRun() {}

    /**
     * Analyses the recording of a run.
     *
     * @param run id or label
     * @param progress is told how far it has come; what it throws ends the work
     * @throws evenblade.base.problem.BadInput where the job, the run or its recording can't be used
     */
    public static AnalysedRecording answer(Path job, String run, Progress progress) {
        JobRuns runs = new JobRuns(JobFolder.open(job));
        return AnalyseRecording.answer(
                runs.request((Detail.Run) runs.record().run(run).detail()), progress);
    }
}
