package evenblade.cli;

import evenblade.app.JudgeTracking;
import evenblade.json.JsonWriter;
import java.io.PrintWriter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code evenblade tracking}: what the tip marks of a job say together. */
final class TrackingCommand implements Command {
    @Override
    public void describe(CommandSpec spec) {
        spec.usageMessage()
                .description("Weigh the tip marks of a job: which blade, which hub position, what to try next.");
        JobWords.addFolder(spec);
        spec.addOption(Options.json());
    }

    @Override
    public int run(ParseResult words, PrintWriter out) {
        JudgeTracking.TrackView view = JudgeTracking.answer(JobWords.folder(words));
        if (Options.said(words, "--json")) {
            out.print(JsonWriter.write(TrackingJson.of(view)));
        } else {
            TrackingText.lines(view).forEach(out::println);
        }
        return ExitStatus.DONE;
    }
}
