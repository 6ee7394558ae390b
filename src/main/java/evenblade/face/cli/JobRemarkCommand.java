package evenblade.face.cli;

import evenblade.face.app.WriteEntry;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Entry;
import java.io.PrintWriter;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code evenblade job correction} and {@code evenblade job note}: entries that are all words. */
final class JobRemarkCommand implements Command {
    private final Detail detail;
    private final String description;
    private final String content;

    private JobRemarkCommand(Detail detail, String description, String content) {
        this.detail = detail;
        this.description = description;
        this.content = content;
    }

    static JobRemarkCommand correction() {
        return new JobRemarkCommand(
                new Detail.Correction(), "Write down what was changed on the aircraft.", "What was changed.");
    }

    static JobRemarkCommand note() {
        return new JobRemarkCommand(new Detail.Note(), "Write down a remark.", "The remark.");
    }

    @Override
    public void describe(CommandSpec spec) {
        spec.usageMessage().description(description);
        JobWords.addFolder(spec);
        spec.addPositional(Options.words(1, "TEXT", String.class, content));
        JobWords.addTime(spec);
    }

    @Override
    public int run(ParseResult words, PrintWriter out) {
        Entry entry = new Entry(JobWords.time(words), Optional.empty(), JobWords.sentence(words), detail);
        return JobWords.written(JobWords.folder(words), List.of(WriteEntry.append(JobWords.folder(words), entry)), out);
    }
}
