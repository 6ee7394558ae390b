package evenblade.cli;

import evenblade.problem.BadInput;
import evenblade.units.FullScale;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The words with which a recording is named and its reading steered; mixed into every command that takes one. */
final class RecordingOptions {
    /** A speed is said for one shaft, not both. */
    static final class Speed {
        @Option(
                names = "--engine-rpm",
                paramLabel = "RPM",
                description = "Engine speed as read in the cockpit; the search keeps to it.")
        private Double engineRpm;

        @Option(names = "--propeller-rpm", paramLabel = "RPM", description = "The same for the propeller's speed.")
        private Double propellerRpm;
    }

    @Parameters(paramLabel = "RECORDING", description = "A WAV, AIFF, AU, FLAC or CSV file.")
    private Path recording;

    @ArgGroup(exclusive = true)
    private Speed speed = new Speed();

    @Option(
            names = "--tolerance",
            paramLabel = "PCT",
            defaultValue = "5",
            description = "How wrong the entered speed may be, in percent (${DEFAULT-VALUE}).")
    private double tolerancePercent;

    @Option(
            names = "--channel",
            paramLabel = "CHANNEL",
            description = "Analyse this channel, by name or number from 1; may be repeated.")
    private List<String> channels = new ArrayList<>();

    @Option(
            names = "--mark-channel",
            paramLabel = "CHANNEL",
            description = "The channel with the once-per-revolution mark of the propeller.")
    private String markChannel;

    @Option(
            names = "--full-scale",
            paramLabel = "VALUE",
            description = "What the largest sample stands for, such as \"50 m/s2\", \"8 g\" or \"2 V\".")
    private String fullScale;

    Path recording() {
        return recording;
    }

    /** The engine speed said, above zero. */
    OptionalDouble engineRpm() {
        return positive("--engine-rpm", Optional.ofNullable(speed.engineRpm));
    }

    /** The propeller speed said, above zero. */
    OptionalDouble propellerRpm() {
        return positive("--propeller-rpm", Optional.ofNullable(speed.propellerRpm));
    }

    /** How wrong the said speed may be: above 0 and at most 50 percent. */
    double tolerancePercent() {
        if (!(tolerancePercent > 0 && tolerancePercent <= 50)) {
            throw BadInput.in("--tolerance")
                    .found(String.valueOf(tolerancePercent), "a percentage above 0, at most 50");
        }
        return tolerancePercent;
    }

    /** Names or numbers of the channels; empty for all. */
    List<String> channels() {
        return List.copyOf(channels);
    }

    Optional<String> markChannel() {
        return Optional.ofNullable(markChannel);
    }

    Optional<FullScale> fullScale() {
        return Optional.ofNullable(fullScale).map(text -> FullScale.parse(text, BadInput.in("--full-scale")));
    }

    private static OptionalDouble positive(String option, Optional<Double> value) {
        if (value.isEmpty()) {
            return OptionalDouble.empty();
        }
        double rpm = value.get();
        if (!(rpm > 0 && Double.isFinite(rpm))) {
            throw BadInput.in(option).found(String.valueOf(rpm), "a speed in rpm above zero");
        }
        return OptionalDouble.of(rpm);
    }
}
