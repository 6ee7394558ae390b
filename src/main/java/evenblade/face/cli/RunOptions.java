package evenblade.face.cli;

import evenblade.face.app.RunBefore;
import evenblade.input.recording.TableReading;
import evenblade.keep.job.Conditions;
import evenblade.keep.job.Detail;
import evenblade.keep.job.RunSettings;

/** How a run was added, spelt as the options that say it. */
final class RunOptions {
    private RunOptions() {}

    /** Those with which a run was added, where they are to stay the same for the next one. */
    static String again(Detail.Run run) {
        StringBuilder options = new StringBuilder();
        RunSettings settings = run.settings();
        settings.engineRpm().ifPresent(rpm -> add(options, "--engine-rpm", String.valueOf(Math.round(rpm))));
        settings.propellerRpm().ifPresent(rpm -> add(options, "--propeller-rpm", String.valueOf(Math.round(rpm))));
        return options + of(settings, run.conditions());
    }

    /** All but the speed, which is another in each run. */
    static String of(RunSettings settings, Conditions conditions) {
        StringBuilder options = new StringBuilder();
        settings.channels().forEach(channel -> add(options, "--channel", channel));
        settings.markChannel().ifPresent(channel -> add(options, "--mark-channel", channel));
        settings.fullScale().ifPresent(scale -> add(options, "--full-scale", scale));
        table(options, settings.table());
        RunBefore.KEPT.forEach(condition ->
                conditions.get(condition).ifPresent(value -> add(options, "--" + condition.word(), value)));
        return options.toString();
    }

    private static void table(StringBuilder options, TableReading table) {
        table.separator().ifPresent(each -> add(options, "--separator", each.word()));
        table.decimalSign().ifPresent(each -> add(options, "--decimal-sign", each.word()));
        table.timeColumn().ifPresent(each -> add(options, "--time-column", each));
        table.timeUnit().ifPresent(each -> add(options, "--time-unit", each.word()));
        for (TableReading.ColumnReading each : table.columns()) {
            each.scale().ifPresent(scale -> add(options, "--column-scale", each.column() + "=" + scale.text()));
            each.name().ifPresent(name -> add(options, "--column-name", each.column() + "=" + name));
        }
    }

    private static void add(StringBuilder options, String name, String value) {
        options.append(' ').append(name).append(' ').append(quoted(value));
    }

    /** As a shell reads it as one word. */
    static String quoted(String text) {
        return text.matches("[\\p{L}\\p{N}_./:=,+-]+") ? text : "\"" + text.replaceAll("([\"\\\\$`])", "\\\\$1") + "\"";
    }
}
