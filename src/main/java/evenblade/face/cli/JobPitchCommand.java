package evenblade.face.cli;

import evenblade.base.fact.Worded;
import evenblade.base.problem.BadInput;
import evenblade.judge.tracking.Layout;
import evenblade.judge.tracking.PitchReadings.Reference;
import evenblade.keep.job.Detail;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code evenblade job pitch}: blade angles. */
final class JobPitchCommand extends JobStaticCommand {
    @Override
    void describeReadings(CommandSpec spec) {
        spec.usageMessage().description("Write down the blade angles read at one station.");
        spec.addOption(Options.needed("--layout", "LAYOUT", String.class, JobTrackingCommand.LAYOUT_HELP));
        spec.addOption(Options.needed(
                "--readings",
                "ANGLES",
                String.class,
                "The protractor by hub position, like \"17.4 deg,17.2 deg\"; further rounds after a semicolon."));
        spec.addOption(Options.value(
                "--zero", "ANGLE", String.class, "What the protractor showed on its reference. Left out: 0 deg."));
        spec.addOption(
                Options.value("--reference", "hub|level", String.class, "What the zero was taken on. Left out: hub."));
        spec.addOption(Options.value(
                "--station", "LENGTH", String.class, "Distance of the place of reading from the shaft's centre."));
        spec.addOption(Options.value(
                "--sigma", "ANGLE", String.class, "Standard deviation of one reading. Left out: 0.1 deg."));
    }

    @Override
    Detail readings(ParseResult words) {
        return new Detail.Pitch(
                Layout.parse(Options.text(words, "--layout").orElseThrow()),
                Options.text(words, "--readings").orElseThrow(),
                Options.text(words, "--zero"),
                reference(Options.text(words, "--reference").orElse(Reference.HUB.word())),
                Options.text(words, "--station"),
                Options.text(words, "--sigma"));
    }

    private static Reference reference(String word) {
        return Worded.named(Reference.class, word)
                .orElseThrow(() -> BadInput.in("--reference").found("\"" + word + "\"", "hub or level"));
    }
}
