package evenblade.face.cli;

import evenblade.base.problem.BadInput;
import evenblade.base.units.FullScale;
import evenblade.face.app.AnalysisRequest;
import evenblade.input.recording.TableReading;
import evenblade.keep.job.RunSettings;
import evenblade.machine.installation.Installation;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import picocli.CommandLine.Model.ArgGroupSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** The words that steer the reading of a recording; shared by every command that takes one. */
final class RecordingOptions {
    private final ParseResult words;

    /** Reads what was said to a command that {@link #addTo} was called for. */
    RecordingOptions(ParseResult words) {
        this.words = words;
    }

    /** Adds the options; the recording itself is a word of the command's own. */
    static void addTo(CommandSpec spec) {
        spec.addArgGroup(ArgGroupSpec.builder()
                .exclusive(true)
                .addArg(Options.value(
                        "--engine-rpm",
                        "RPM",
                        Double.class,
                        "Engine speed as read in the cockpit; the search keeps near it."))
                .addArg(Options.value("--propeller-rpm", "RPM", Double.class, "The same for the propeller's speed."))
                .build());
        spec.addOption(Options.value(
                "--tolerance", "PCT", Double.class, "How wrong the entered speed may be, in percent (5)."));
        spec.addOption(Options.repeated(
                "--channel",
                "CHANNEL",
                String.class,
                "Analyse this channel, by name or by number from 1; may be repeated."));
        spec.addOption(Options.value(
                "--mark-channel",
                "CHANNEL",
                String.class,
                "The channel with the once-per-revolution mark of the propeller."));
        spec.addOption(Options.value(
                "--full-scale",
                "VALUE",
                String.class,
                "What the largest sample stands for, such as \"50 m/s2\", \"8 g\" or \"2 V\"."));
        TableOptions.addTo(spec);
    }

    /** A recording to be analysed as the words say. */
    AnalysisRequest request(Path recording, Installation installation) {
        return new AnalysisRequest(
                recording,
                installation,
                engineRpm(),
                propellerRpm(),
                tolerancePercent(),
                channels(),
                markChannel(),
                fullScale(),
                table(),
                Optional.empty(),
                List.of());
    }

    /** The engine speed said, above zero. */
    OptionalDouble engineRpm() {
        return positive("--engine-rpm");
    }

    /** The propeller speed said, above zero. */
    OptionalDouble propellerRpm() {
        return positive("--propeller-rpm");
    }

    /** How wrong the said speed may be: above 0 and at most {@link RunSettings#MOST_TOLERANCE_PERCENT}. */
    double tolerancePercent() {
        double percent = Options.number(words, "--tolerance").orElse(AnalysisRequest.DEFAULT_TOLERANCE_PERCENT);
        if (!(percent > 0 && percent <= RunSettings.MOST_TOLERANCE_PERCENT)) {
            throw BadInput.in("--tolerance").found(String.valueOf(percent), "a percentage above 0 and at most 50");
        }
        return percent;
    }

    /** Names or numbers of the channels; empty for all. */
    List<String> channels() {
        return Options.all(words, "--channel");
    }

    Optional<String> markChannel() {
        return Options.text(words, "--mark-channel");
    }

    Optional<FullScale> fullScale() {
        return Options.text(words, "--full-scale").map(text -> FullScale.parse(text, BadInput.in("--full-scale")));
    }

    /** How a table is to be read, as far as it was said. */
    TableReading table() {
        return TableOptions.of(words);
    }

    private OptionalDouble positive(String option) {
        OptionalDouble rpm = Options.number(words, option);
        if (rpm.isPresent() && !(rpm.getAsDouble() > 0 && Double.isFinite(rpm.getAsDouble()))) {
            throw BadInput.in(option).found(String.valueOf(rpm.getAsDouble()), "a speed in rpm above zero");
        }
        return rpm;
    }
}
