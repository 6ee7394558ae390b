package evenblade.cli;

import evenblade.app.ShowTrend;
import evenblade.json.JsonWriter;
import java.io.PrintWriter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code evenblade trend}: every figure over all runs of a job. */
final class TrendCommand implements Command {
    @Override
    public void describe(CommandSpec spec) {
        spec.usageMessage()
                .description("Follow every figure over all runs of a job, with what was changed between them.");
        JobWords.addFolder(spec);
        spec.addOption(WantedSpeed.option());
        spec.addOption(Options.json());
    }

    @Override
    public int run(ParseResult words, PrintWriter out) {
        ShowTrend.Answer answer = ShowTrend.answer(JobWords.folder(words), WantedSpeed.of(words));
        if (Options.said(words, "--json")) {
            out.print(JsonWriter.write(TrendJson.of(answer)));
        } else {
            TrendText.lines(answer).forEach(out::println);
        }
        return ExitStatus.DONE;
    }
}
