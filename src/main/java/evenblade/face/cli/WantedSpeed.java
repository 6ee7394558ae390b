package evenblade.face.cli;

import evenblade.base.problem.BadInput;
import java.util.OptionalDouble;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/** The word that narrows an answer to the dwells near one engine speed. */
final class WantedSpeed {
    private WantedSpeed() {}

    static OptionSpec option() {
        return Options.value("--engine-rpm", "RPM", Double.class, "Only the dwells within 2 %% of this engine speed.");
    }

    static OptionalDouble of(ParseResult words) {
        OptionalDouble rpm = Options.number(words, "--engine-rpm");
        if (rpm.isPresent() && !(rpm.getAsDouble() > 0 && Double.isFinite(rpm.getAsDouble()))) {
            throw BadInput.in("--engine-rpm").found(String.valueOf(rpm.getAsDouble()), "a speed in rpm above zero");
        }
        return rpm;
    }
}
