package evenblade.face.cli;

import evenblade.face.app.JudgeTracking;
import evenblade.judge.tracking.Layout;
import evenblade.judge.tracking.StaticSide.MarkedTips;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import evenblade.tell.document.LimitWords;
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
    List<String> atOnce(Path job, Event event) {
        MarkedTips tips = JudgeTracking.marked(job, event.id());
        List<String> lines = new ArrayList<>(LineWrapper.lines(
                "", "  ", "Spread " + WarningText.PHRASES.figures().both(tips.session().spreadMm()) + "."));
        boolean beyond = tips.withinLimit().map(within -> !within).orElse(false);
        if (beyond) {
            lines.add("BEYOND THE LIMIT: don't run it like this before the maker's figure is looked up.");
        }
        tips.checks().forEach(check -> lines.addAll(LineWrapper.lines("  ", "  ", LimitWords.of(check, WarningText.PHRASES.figures()))));
        if (tips.checks().isEmpty()) {
            lines.addAll(LineWrapper.lines(
                    "", "  ", "No limit for the track is entered: the propeller maker's figure rules. Usual figures:"));
            tips.usual()
                    .forEach(figure -> lines.addAll(LineWrapper.lines("  ", "  ", LimitWords.usual(figure, WarningText.PHRASES.figures()))));
        }
        return lines;
    }

    @Override
    Detail readings(ParseResult words) {
        return new Detail.Tracking(
                Layout.parse(Options.text(words, "--layout").orElseThrow()),
                Options.text(words, "--readings").orElseThrow(),
                Options.text(words, "--sigma"));
    }
}
