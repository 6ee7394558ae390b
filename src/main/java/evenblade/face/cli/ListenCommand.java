package evenblade.face.cli;

import evenblade.base.fact.Fact;
import evenblade.face.app.ListenToInput;
import evenblade.measure.soundcheck.LevelAim;
import evenblade.tell.document.FigureFormat;
import java.io.PrintWriter;
import java.nio.file.Path;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code evenblade listen}: watch level and channels of an input before anything is recorded. */
final class ListenCommand implements Command {
    @Override
    public void describe(CommandSpec spec) {
        spec.usageMessage()
                .description("Watch the level of a microphone or line input without recording, and hear what is to be"
                        + " set right. Run the engine at the highest dwell speed meanwhile. Ctrl-C ends it.");
        InputWords.addTo(spec);
        spec.addOption(Options.value(
                "--installation", "FILE", Path.class, "What runs, to see speed and orders while it listens."));
    }

    @Override
    public int run(ParseResult words, PrintWriter out) {
        ListenToInput listening = ListenToInput.prepare(new ListenToInput.Request(
                Options.text(words, "--device"),
                InputWords.wish(words),
                Options.number(words, "--seconds"),
                Options.text(words, "--mark-channel"),
                Options.path(words, "--installation"),
                Options.path(words, "--quiet-take")));
        out.println("Listening to " + listening.device());
        out.println("without recording; Ctrl-C ends it.");
        out.flush();
        CleanEnd end = CleanEnd.by(listening::stop, out);
        LiveLine line = LiveLine.show(listening::view, () -> words(listening.aim()), listening::urgent, out);
        try {
            ListenToInput.Heard heard = listening.listen();
            line.close();
            out.println(RecordCommand.capital(WarningText.of(Fact.of(heard.ending()))) + ": "
                    + FigureFormat.fixed(heard.durationS(), 1) + " s heard");
            if (heard.warnings().isEmpty()) {
                out.println(inOrder(listening.aim()));
            }
            RecordCommand.tell(heard.warnings(), out);
        } finally {
            line.close();
            out.flush();
            end.close();
        }
        return ExitStatus.DONE;
    }

    /** Where nothing was found to be wrong. */
    static String inOrder(LevelAim aim) {
        return aim == LevelAim.GOOD
                ? "Level and channels are in order: good at the end."
                : "Channels are in order; the level at the end: " + words(aim) + ".";
    }

    /** What to do, in few letters. */
    static String words(LevelAim aim) {
        return switch (aim) {
            case SILENT -> "silent";
            case TURN_UP -> "turn up";
            case GOOD -> "good";
            case TURN_DOWN -> "turn down";
            case OVERDRIVEN -> "overdriven before the gain";
        };
    }
}
