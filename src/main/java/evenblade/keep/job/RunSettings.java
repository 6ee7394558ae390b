package evenblade.keep.job;

import evenblade.input.recording.TableReading;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How a run is to be analysed: the options given when it was added.
 *
 * @param engineRpm entered engine speed
 * @param propellerRpm entered propeller speed; never together with {@code engineRpm}
 * @param tolerancePercent how far the entered speed may be wrong
 * @param channels names or numbers of the channels to look at; empty for all
 * @param markChannel name or number of the channel with the once-per-rev mark
 * @param fullScale what a full-scale sample stands for, as entered
 * @param table how its table is to be read, as far as it was said
 */
public record RunSettings(
        OptionalDouble engineRpm,
        OptionalDouble propellerRpm,
        OptionalDouble tolerancePercent,
        List<String> channels,
        Optional<String> markChannel,
        Optional<String> fullScale,
        TableReading table) {
    /** Nothing entered: the signal has to tell everything. */
    public static final RunSettings NONE = new RunSettings(
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            List.of(),
            Optional.empty(),
            Optional.empty(),
            TableReading.UNSAID);

    public RunSettings {
        channels = List.copyOf(channels);
        if (engineRpm.isPresent() && propellerRpm.isPresent()) {
            throw new IllegalArgumentException("a run has an engine speed or a propeller speed, not both");
        }
    }

    /** These, and where something is unsaid, those. */
    RunSettings over(RunSettings those) {
        boolean speed = engineRpm.isPresent() || propellerRpm.isPresent();
        return new RunSettings(
                speed ? engineRpm : those.engineRpm,
                speed ? propellerRpm : those.propellerRpm,
                tolerancePercent.isPresent() ? tolerancePercent : those.tolerancePercent,
                channels.isEmpty() ? those.channels : channels,
                markChannel.or(() -> those.markChannel),
                fullScale.or(() -> those.fullScale),
                table.unsaid() ? those.table : table);
    }

    /** The same with an entered engine speed. */
    public RunSettings withEngineRpm(double rpm) {
        return new RunSettings(
                OptionalDouble.of(rpm),
                OptionalDouble.empty(),
                tolerancePercent,
                channels,
                markChannel,
                fullScale,
                table);
    }

    /** The same with an entered propeller speed. */
    public RunSettings withPropellerRpm(double rpm) {
        return new RunSettings(
                OptionalDouble.empty(),
                OptionalDouble.of(rpm),
                tolerancePercent,
                channels,
                markChannel,
                fullScale,
                table);
    }

    /** The same with a mark channel. */
    public RunSettings withMarkChannel(String channel) {
        return new RunSettings(
                engineRpm, propellerRpm, tolerancePercent, channels, Optional.of(channel), fullScale, table);
    }

    /** The same without a mark channel. */
    public RunSettings withoutMarkChannel() {
        return new RunSettings(engineRpm, propellerRpm, tolerancePercent, channels, Optional.empty(), fullScale, table);
    }

    /** The same with a full scale. */
    public RunSettings withFullScale(String value) {
        return new RunSettings(
                engineRpm, propellerRpm, tolerancePercent, channels, markChannel, Optional.of(value), table);
    }

    /** The same with a way to read its table. */
    public RunSettings withTable(TableReading said) {
        return new RunSettings(engineRpm, propellerRpm, tolerancePercent, channels, markChannel, fullScale, said);
    }
}
