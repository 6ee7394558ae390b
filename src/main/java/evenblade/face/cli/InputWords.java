package evenblade.face.cli;

import evenblade.base.problem.BadInput;
import evenblade.input.capture.FormatWish;
import java.nio.file.Path;
import java.util.OptionalInt;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** The words for a live input, which the commands that use one share. */
final class InputWords {
    private InputWords() {}

    static void addTo(CommandSpec spec) {
        spec.addOption(Options.value(
                "--device", "NAME", String.class, "The input, by its name in 'devices' or a part of it (the first)."));
        spec.addOption(Options.value("--rate", "HZ", Integer.class, "Samples per second (48000, or the nearest)."));
        spec.addOption(Options.value("--channels", "N", Integer.class, "Number of channels (2, or the nearest)."));
        spec.addOption(Options.value("--bits", "N", Integer.class, "Size of a sample: 16, 24 or 32 (24, or 16)."));
        spec.addOption(Options.value("--seconds", "N", Double.class, "How long. Left out: until Ctrl-C."));
        spec.addOption(Options.value(
                "--mark-channel",
                "CHANNEL",
                String.class,
                "The channel with the once-per-revolution mark of the propeller."));
        spec.addOption(Options.value(
                "--quiet-take",
                "FILE",
                Path.class,
                "Five seconds from the same input with the engine standing, to tell hum and noise from the run."));
    }

    /** Rate, channels and size of a sample, as far as they were said. */
    static FormatWish wish(ParseResult words) {
        return new FormatWish(positive(words, "--rate"), positive(words, "--channels"), positive(words, "--bits"));
    }

    static OptionalInt positive(ParseResult words, String name) {
        OptionalInt value = Options.whole(words, name);
        if (value.isPresent() && value.getAsInt() <= 0) {
            throw BadInput.in(name).found(String.valueOf(value.getAsInt()), "a whole number above zero");
        }
        return value;
    }
}
