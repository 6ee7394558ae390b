package evenblade.cli;

import evenblade.app.ShowTrend;
import evenblade.json.JsonFields;
import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code evenblade trend}: every figure over all runs of a job. */
final class TrendCommand extends JobQuestionCommand<ShowTrend.Answer> {
    @Override
    String purpose() {
        return "Follow every figure over all runs of a job, with what was changed between them.";
    }

    @Override
    void describeMore(CommandSpec spec) {
        spec.addOption(WantedSpeed.option());
    }

    @Override
    ShowTrend.Answer ask(Path job, ParseResult words) {
        return ShowTrend.answer(job, WantedSpeed.of(words));
    }

    @Override
    JsonFields json(ShowTrend.Answer answer) {
        return TrendJson.of(answer);
    }

    @Override
    List<String> text(ShowTrend.Answer answer) {
        return TrendText.lines(answer);
    }
}
