package evenblade.face.cli;

import evenblade.face.app.WriteEntry;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code evenblade job installation}: puts the installation right, by a later entry. */
final class JobInstallationCommand implements Command {
    @Override
    public void describe(CommandSpec spec) {
        spec.usageMessage()
                .description(
                        "Put the installation of a job right. What was entered before stays in the record; all runs"
                                + " are measured with the new one.")
                .footer("", "To take it back, cross out the entry that it made (job strike).");
        JobWords.addFolder(spec);
        spec.addPositional(Options.word(1, "FILE", Path.class, "The installation file."));
        JobWords.addRemark(spec);
        JobWords.addTime(spec);
    }

    @Override
    public int run(ParseResult words, PrintWriter out) {
        return JobWords.written(
                JobWords.folder(words),
                List.of(WriteEntry.installation(
                        JobWords.folder(words),
                        words.matchedPositionalValue(1, (Path) null),
                        JobWords.remark(words),
                        JobWords.time(words))),
                out);
    }
}
