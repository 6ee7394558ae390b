package evenblade.face.cli;

import evenblade.face.app.WriteEntry;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code evenblade job attach}: photos and papers. */
final class JobAttachCommand implements Command {
    @Override
    public void describe(CommandSpec spec) {
        spec.usageMessage().description("Copy photos and papers into a job.");
        JobWords.addFolder(spec);
        spec.addPositional(Options.words(1, "FILE", Path.class, "Photos and papers."));
        JobWords.addRemark(spec);
        JobWords.addTime(spec);
    }

    @Override
    public int run(ParseResult words, PrintWriter out) {
        List<Path> files = words.matchedPositionalValue(1, List.<Path>of());
        return JobWords.written(
                JobWords.folder(words),
                WriteEntry.attach(JobWords.folder(words), files, JobWords.remark(words), JobWords.time(words)),
                out);
    }
}
