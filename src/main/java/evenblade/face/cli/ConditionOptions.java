package evenblade.face.cli;

import evenblade.face.app.WriteEntry;
import evenblade.keep.job.Conditions;
import evenblade.keep.job.Conditions.Condition;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** The words that say what a run was like; shared by every command that makes a run or puts one right. */
final class ConditionOptions {
    /** Said of a run that was asked about. */
    static final String ANSWER = "--" + Condition.NOTHING_CHANGED.word();

    private ConditionOptions() {}

    /** Adds all of them. */
    static void addTo(CommandSpec spec) {
        for (Condition condition : Condition.NOTED) {
            add(spec, condition);
        }
    }

    /** Adds those that a recording can't know by itself. */
    static void addToRecording(CommandSpec spec) {
        for (Condition condition : Condition.NOTED) {
            if (condition != Condition.DEVICE) {
                add(spec, condition);
            }
        }
    }

    private static void add(CommandSpec spec, Condition condition) {
        spec.addOption(Options.value("--" + condition.word(), "TEXT", String.class, describe(condition)));
    }

    /** What was said of all of them. */
    static Conditions of(ParseResult words) {
        Conditions conditions = ofRecording(words);
        Optional<String> device = Options.text(words, "--" + Condition.DEVICE.word());
        return device.isPresent() ? conditions.with(Condition.DEVICE, device.get()) : conditions;
    }

    /** What was said of those that a recording can't know by itself. */
    static Conditions ofRecording(ParseResult words) {
        Conditions conditions = Conditions.NONE;
        for (Condition condition : Condition.NOTED) {
            Optional<String> value =
                    condition == Condition.DEVICE ? Optional.empty() : Options.text(words, "--" + condition.word());
            if (value.isPresent()) {
                conditions = conditions.with(condition, value.get());
            }
        }
        return conditions;
    }

    /** Adds the answer to the question whether something was changed before a run. */
    static void addAnswer(CommandSpec spec) {
        spec.addOption(Options.flag(ANSWER, describe(Condition.NOTHING_CHANGED)));
    }

    /** Conditions with that answer, where it was given. */
    static Conditions answered(Conditions conditions, ParseResult words) {
        return Options.said(words, ANSWER)
                ? conditions.with(Condition.NOTHING_CHANGED, WriteEntry.SINCE_THE_RUN_BEFORE)
                : conditions;
    }

    private static String describe(Condition condition) {
        return switch (condition) {
            case WIND -> "Wind during the run.";
            case TEMPERATURE -> "Outside air temperature.";
            case FUEL -> "Fuel on board.";
            case SENSOR -> "Which sensor.";
            case PLACE -> "Where it was fixed.";
            case DIRECTION -> "Which way it pointed: across, along or up.";
            case GAIN -> "Gain or range of the recorder.";
            case DEVICE -> "What recorded it.";
            case NOTHING_CHANGED -> "That nothing was changed since the run before it; the answer to [repeats-differ].";
        };
    }
}
