package evenblade.cli;

import evenblade.app.WeighFindings;
import evenblade.json.JsonWriter;
import java.io.PrintWriter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code evenblade findings}: what a job's measurements point to. */
final class FindingsCommand implements Command {
    @Override
    public void describe(CommandSpec spec) {
        spec.usageMessage()
                .description("Weigh all that a job has measured: what it points to, how surely, what to do next.");
        JobWords.addFolder(spec);
        spec.addOption(Options.json());
    }

    @Override
    public int run(ParseResult words, PrintWriter out) {
        WeighFindings.Answer answer = WeighFindings.answer(JobWords.folder(words));
        if (Options.said(words, "--json")) {
            out.print(JsonWriter.write(FindingsJson.of(answer)));
        } else {
            FindingsText.lines(answer).forEach(out::println);
        }
        return ExitStatus.DONE;
    }
}
