package evenblade.keep.job;

import evenblade.base.problem.BadInput;
import evenblade.input.recording.TableReading;
import evenblade.machine.installation.Engine;
import java.util.List;
import java.util.Locale;
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
    /** A speed entered with a larger doubt isn't worth entering: it would take in half and double. */
    public static final double MOST_TOLERANCE_PERCENT = 50;
    /** Below any instrument's reading error; only zero and less are really meant to be kept out. */
    private static final double LEAST_TOLERANCE_PERCENT = 1e-6;
    /** An engine at its least speed behind a reduction of a hundred to one. */
    private static final double LEAST_PROPELLER_RPM = Engine.LEAST_RPM / 100;
    /** More channels than any file that is read here has. */
    private static final int MOST_CHANNELS = 1000;

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

    /** What these say of channels, mark, scale and table, and those don't or otherwise. A speed belongs to its run alone. */
    public RunSettings unlike(RunSettings those) {
        return new RunSettings(
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                channels.equals(those.channels) ? List.of() : channels,
                markChannel.filter(each -> !markChannel.equals(those.markChannel)),
                fullScale.filter(each -> !fullScale.equals(those.fullScale)),
                table.equals(those.table) ? TableReading.UNSAID : table);
    }

    /** These, and where something is unsaid, those. */
    public RunSettings over(RunSettings those) {
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

    /**
     * Refuses what no entry made here has. A run whose settings can't be used is that run's trouble: its record is
     * read all the same.
     *
     * @throws BadInput with the value and its bounds
     */
    public void requireUsable() {
        within("engine speed", engineRpm, Engine.LEAST_RPM, Engine.MOST_RPM, "rpm");
        within("propeller speed", propellerRpm, LEAST_PROPELLER_RPM, Engine.MOST_RPM, "rpm");
        within("tolerance of the speed", tolerancePercent, LEAST_TOLERANCE_PERCENT, MOST_TOLERANCE_PERCENT, "%");
        if (channels.size() > MOST_CHANNELS || table.columns().size() > MOST_CHANNELS) {
            throw BadInput.in("settings of the run").found("too many channels", "at most " + MOST_CHANNELS);
        }
    }

    private static void within(String what, OptionalDouble value, double least, double most, String unit) {
        if (value.isPresent() && !(value.getAsDouble() >= least && value.getAsDouble() <= most)) {
            throw BadInput.in(what)
                    .found(
                            String.valueOf(value.getAsDouble()) + " " + unit,
                            String.format(Locale.ROOT, "from %s to %s %s", least, most, unit));
        }
    }

    /** With an entered engine speed. */
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

    /** With an entered propeller speed. */
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

    /** With a mark channel. */
    public RunSettings withMarkChannel(String channel) {
        return new RunSettings(
                engineRpm, propellerRpm, tolerancePercent, channels, Optional.of(channel), fullScale, table);
    }

    /** Without a mark channel. */
    public RunSettings withoutMarkChannel() {
        return new RunSettings(engineRpm, propellerRpm, tolerancePercent, channels, Optional.empty(), fullScale, table);
    }

    /** With a full scale. */
    public RunSettings withFullScale(String value) {
        return new RunSettings(
                engineRpm, propellerRpm, tolerancePercent, channels, markChannel, Optional.of(value), table);
    }

    /** With a way to read its table. */
    public RunSettings withTable(TableReading said) {
        return new RunSettings(engineRpm, propellerRpm, tolerancePercent, channels, markChannel, fullScale, said);
    }
}
