package evenblade.face.cli;

import evenblade.face.app.JobTakes;
import java.io.PrintWriter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code evenblade job rescue}: takes that something broke off into the job. */
final class JobRescueCommand implements Command {
    @Override
    public void describe(CommandSpec spec) {
        spec.usageMessage()
                .description(
                        "Bring all takes into the job that are beside it: recordings that a crash, a flat battery or"
                                + " a full disk broke off.");
        JobWords.addFolder(spec);
    }

    @Override
    public int run(ParseResult words, PrintWriter out) {
        JobTakes.Rescued rescued = JobTakes.rescue(JobWords.folder(words));
        if (rescued.events().isEmpty()) {
            out.println("No take to rescue.");
        }
        JobWords.written(JobWords.folder(words), rescued.events(), out);
        rescued.empty().forEach(file -> out.println(file + " holds not one byte; it stays where it is."));
        WarningText.marked(rescued.warnings()).forEach(out::println);
        return ExitStatus.DONE;
    }
}
