package evenblade.face.cli;

import evenblade.base.problem.BadInput;
import evenblade.face.app.ShowJob;
import evenblade.keep.job.EntryTime;
import evenblade.keep.job.Event;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** The words that the commands of a job share. */
final class JobWords {
    private JobWords() {}

    /** The job folder, first word of every command on a job. */
    static void addFolder(CommandSpec spec) {
        spec.addPositional(Options.word(0, "DIR", Path.class, "The job folder."));
    }

    /** When it happened. */
    static void addTime(CommandSpec spec) {
        spec.addOption(Options.value(
                "--at",
                "TIME",
                String.class,
                "When it happened, like 2026-05-04T10:30 or 2026-05-04T10:30:00+02:00. Left out: now."));
    }

    /** A remark beside the readings or files. */
    static void addRemark(CommandSpec spec) {
        spec.addOption(Options.value("--text", "TEXT", String.class, "A remark."));
    }

    static Path folder(ParseResult words) {
        return words.matchedPositionalValue(0, (Path) null);
    }

    static Optional<OffsetDateTime> time(ParseResult words) {
        return Options.text(words, "--at")
                .map(text -> EntryTime.parse(text, ZoneId.systemDefault(), BadInput.in("--at")));
    }

    static String remark(ParseResult words) {
        return Options.text(words, "--text").orElse("");
    }

    /** The sentence that the words from the second on make, quoted or not. */
    static String sentence(ParseResult words) {
        return String.join(" ", words.matchedPositionalValue(1, List.<String>of()));
    }

    /** Says what was written into a job, and that its clock stood behind, where it did. */
    static int written(Path folder, List<Event> events, PrintWriter out) {
        events.forEach(event -> JobText.written(event).forEach(out::println));
        WarningText.marked(ShowJob.clockBehind(folder, events)).forEach(out::println);
        return ExitStatus.DONE;
    }
}
