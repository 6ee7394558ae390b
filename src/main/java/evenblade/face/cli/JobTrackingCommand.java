package evenblade.face.cli;

import evenblade.face.app.JudgeTracking;
import evenblade.judge.tracking.Layout;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.tell.document.Document;
import evenblade.tell.document.TrackingDocument;
import java.nio.file.Path;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code evenblade job tracking}: tip marks. */
final class JobTrackingCommand extends JobStaticCommand {
    static final String LAYOUT_HELP = "Which blade sat on which hub position, like 1=A,2=B,3=C.";

    @Override
    void describeReadings(CommandSpec spec) {
        spec.usageMessage().description("Write down the tip marks of all blades against a block.");
        spec.addOption(Options.needed("--layout", "LAYOUT", String.class, LAYOUT_HELP));
        spec.addOption(Options.needed(
                "--readings",
                "LENGTHS",
                String.class,
                "The marks by hub position, like \"0 in,1/16 in,3/16 in\"; further rounds after a semicolon."));
        spec.addOption(Options.value(
                "--sigma",
                "LENGTH",
                String.class,
                "Standard deviation of one reading. Left out: 0.5 mm, a pencil line read with a rule."));
    }

    /** The spread, and the limits it keeps or not; where none is entered, usual figures. */
    @Override
    Document atOnce(Path job, Event event) {
        return TrackingDocument.entered(JudgeTracking.marked(job, event.id()), WarningText.PHRASES);
    }

    @Override
    Detail readings(ParseResult words) {
        return new Detail.Tracking(
                Layout.parse(Options.text(words, "--layout").orElseThrow()),
                Options.text(words, "--readings").orElseThrow(),
                Options.text(words, "--sigma"));
    }
}
