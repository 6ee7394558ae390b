package evenblade.face.cli;

import evenblade.face.app.WriteEntry;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Entry;
import evenblade.tell.document.Document;
import java.io.PrintWriter;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** What the commands for static readings have in common: readings in, one entry out. */
abstract class JobStaticCommand implements Command {
    /** Describes the command and the options of its readings. */
    abstract void describeReadings(CommandSpec spec);

    /** The readings that were said. */
    abstract Detail readings(ParseResult words);

    @Override
    public final void describe(CommandSpec spec) {
        JobWords.addFolder(spec);
        describeReadings(spec);
        JobWords.addRemark(spec);
        JobWords.addTime(spec);
    }

    @Override
    public final int run(ParseResult words, PrintWriter out) {
        Entry entry = new Entry(JobWords.time(words), Optional.empty(), JobWords.remark(words), readings(words));
        int status = JobWords.written(List.of(WriteEntry.answer(JobWords.folder(words), entry)), out);
        Terminal.lines(Document.begin().handsOff().done()).forEach(out::println);
        return status;
    }
}
