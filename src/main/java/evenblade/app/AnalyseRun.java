package evenblade.app;

import evenblade.job.Detail;
import evenblade.job.Event;
import evenblade.job.JobFolder;
import evenblade.job.RunSettings;
import evenblade.problem.BadInput;
import evenblade.units.FullScale;
import java.nio.file.Path;

/** Answers what shook in one run of a job, with the options it was added with. */
public final class AnalyseRun {
    private AnalyseRun() {}

    /**
     * Analyses the recording of a run.
     *
     * @param run id or label
     * @param progress is told how far it has come; what it throws ends the work
     * @throws BadInput where the job, the run or its recording can't be used
     */
    public static AnalysedRecording answer(Path job, String run, Progress progress) {
        JobFolder folder = JobFolder.open(job);
        return AnalyseRecording.answer(request(folder, folder.record().run(run)), progress);
    }

    private static AnalysisRequest request(JobFolder folder, Event run) {
        Detail.Run detail = (Detail.Run) run.detail();
        RunSettings settings = detail.settings();
        return new AnalysisRequest(
                folder.locate(detail.file()),
                folder.record().installation(),
                settings.engineRpm(),
                settings.propellerRpm(),
                settings.tolerancePercent().orElse(AnalysisRequest.DEFAULT_TOLERANCE_PERCENT),
                settings.channels(),
                settings.markChannel(),
                settings.fullScale().map(text -> FullScale.parse(text, BadInput.in("full scale"))));
    }
}
