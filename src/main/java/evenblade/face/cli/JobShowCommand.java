package evenblade.face.cli;

import evenblade.base.json.JsonWriter;
import evenblade.face.app.ShowJob;
import evenblade.keep.job.EvidenceCheck.Thoroughness;
import java.io.PrintWriter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code evenblade job show}: what a job record holds. */
final class JobShowCommand implements Command {
    @Override
    public void describe(CommandSpec spec) {
        spec.usageMessage().description("Show what a job record holds, and whether its files are as they were.");
        JobWords.addFolder(spec);
        spec.addOption(Options.flag(
                "--every-byte", "Read every recording and attachment whole and hold it against its hash."));
        spec.addOption(Options.json());
    }

    @Override
    public int run(ParseResult words, PrintWriter out) {
        ShowJob.JobView view = ShowJob.show(
                JobWords.folder(words),
                Options.said(words, "--every-byte") ? Thoroughness.EVERY_BYTE : Thoroughness.QUICK);
        if (Options.said(words, "--json")) {
            out.print(JsonWriter.write(JobJson.of(view)));
        } else {
            JobText.lines(view).forEach(out::println);
        }
        return ExitStatus.DONE;
    }
}
