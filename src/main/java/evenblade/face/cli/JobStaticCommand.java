package evenblade.face.cli;

import evenblade.face.app.WriteEntry;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Entry;
import evenblade.keep.job.Event;
import evenblade.tell.document.Document;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** What the commands for static readings have in common: readings in, one entry out. */
abstract class JobStaticCommand implements Command {
    /** Describes the command and the options of its readings. */
    abstract void describeReadings(CommandSpec spec);

    /** What has to be said of them at once; nothing unless a command says otherwise. */
    Document atOnce(Path job, Event event) {
        return Document.begin().done();
    }

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
        Event event = WriteEntry.append(JobWords.folder(words), entry);
        int status = JobWords.written(JobWords.folder(words), List.of(event), out);
        Terminal.lines(Document.begin()
                        .addAll(atOnce(JobWords.folder(words), event))
                        .handsOff()
                        .done())
                .forEach(out::println);
        return status;
    }
}
