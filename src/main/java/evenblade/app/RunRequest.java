package evenblade.app;

import evenblade.comparison.RunConditions;
import evenblade.job.Conditions;
import evenblade.job.Conditions.Condition;
import evenblade.job.Detail;
import evenblade.job.JobFolder;
import evenblade.job.RunSettings;
import evenblade.problem.BadInput;
import evenblade.units.FullScale;
import java.util.Optional;

/** A run as the record has it, turned into what its analysis and its comparison ask for. */
final class RunRequest {
    private RunRequest() {}

    static AnalysisRequest of(JobFolder folder, Detail.Run run) {
        RunSettings settings = run.settings();
        return new AnalysisRequest(
                folder.locate(run.file()),
                folder.record().installation(),
                settings.engineRpm(),
                settings.propellerRpm(),
                settings.tolerancePercent().orElse(AnalysisRequest.DEFAULT_TOLERANCE_PERCENT),
                settings.channels(),
                settings.markChannel(),
                fullScale(settings));
    }

    static RunConditions conditions(Detail.Run run) {
        Conditions noted = run.conditions();
        return new RunConditions(
                noted.get(Condition.SENSOR),
                noted.get(Condition.PLACE),
                noted.get(Condition.DIRECTION),
                noted.get(Condition.GAIN),
                noted.get(Condition.DEVICE),
                fullScale(run.settings()),
                noted.get(Condition.WIND),
                noted.get(Condition.TEMPERATURE),
                noted.get(Condition.FUEL));
    }

    private static Optional<FullScale> fullScale(RunSettings settings) {
        return settings.fullScale().map(text -> FullScale.parse(text, BadInput.in("full scale")));
    }
}
