package evenblade.face.cli;

import evenblade.face.app.WriteEntry;
import evenblade.keep.job.Event;
import java.io.PrintWriter;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code evenblade job strike}: takes an entry back without erasing it. */
final class JobStrikeCommand implements Command {
    @Override
    public void describe(CommandSpec spec) {
        spec.usageMessage()
                .description("Cross out an entry: it stays in the record and no longer counts.")
                .footer("", "To take it back, cross out the entry that it made.");
        JobWords.addFolder(spec);
        spec.addPositional(Options.word(1, "ENTRY", String.class, "The entry's id, like e7."));
        spec.addOption(Options.value("--why", "TEXT", String.class, "The reason."));
    }

    @Override
    public int run(ParseResult words, PrintWriter out) {
        String id = words.matchedPositionalValue(1, "");
        Event strike = WriteEntry.strike(
                JobWords.folder(words), id, Options.text(words, "--why").orElse(""));
        return JobWords.written(JobWords.folder(words), List.of(strike), out);
    }
}
