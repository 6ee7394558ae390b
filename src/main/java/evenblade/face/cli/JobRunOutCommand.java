package evenblade.face.cli;

import evenblade.keep.job.Detail;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code evenblade job runout}: the flange under a dial gauge. */
final class JobRunOutCommand extends JobStaticCommand {
    @Override
    void describeReadings(CommandSpec spec) {
        spec.usageMessage().description("Write down the face run-out of the propeller flange, read with a dial gauge.");
        spec.addOption(Options.needed(
                "--total", "LENGTH", String.class, "Largest minus smallest reading over one turn of the shaft."));
        spec.addOption(Options.needed(
                "--dial-radius", "LENGTH", String.class, "How far from the shaft's centre the dial touched."));
        spec.addOption(Options.value(
                "--high",
                "ANGLE",
                String.class,
                "Where it read highest: the angle from hub position 1 towards position 2."));
    }

    @Override
    Detail readings(ParseResult words) {
        return new Detail.RunOut(
                Options.text(words, "--total").orElseThrow(),
                Options.text(words, "--dial-radius").orElseThrow(),
                Options.text(words, "--high"));
    }
}
