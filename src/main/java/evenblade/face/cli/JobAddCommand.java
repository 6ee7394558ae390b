package evenblade.face.cli;

import evenblade.face.app.AddRun;
import evenblade.keep.job.Conditions;
import evenblade.keep.job.Conditions.Condition;
import evenblade.keep.job.NewRun;
import evenblade.keep.job.RunSettings;
import evenblade.tell.document.RunDocument;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code evenblade job add}: a ground run into the job. */
final class JobAddCommand implements Command {
    @Override
    public void describe(CommandSpec spec) {
        spec.usageMessage()
                .description("Copy the recording of a ground run into a job, with how it is to be analysed.");
        JobWords.addFolder(spec);
        spec.addPositional(Options.word(1, "RECORDING", Path.class, "A WAV, AIFF, AU, FLAC or CSV file."));
        spec.addOption(Options.value("--label", "TEXT", String.class, "A short name for the run, like \"before\"."));
        RecordingOptions.addTo(spec);
        for (Condition condition : Condition.values()) {
            spec.addOption(Options.value("--" + condition.word(), "TEXT", String.class, describe(condition)));
        }
        JobWords.addRemark(spec);
        JobWords.addTime(spec);
    }

    @Override
    public int run(ParseResult words, PrintWriter out) {
        Path recording = words.matchedPositionalValue(1, (Path) null);
        NewRun run = new NewRun(
                JobWords.time(words),
                Options.text(words, "--label"),
                JobWords.remark(words),
                settings(words),
                conditions(words));
        AddRun.Added added;
        try (WorkBar bar = new WorkBar()) {
            added = AddRun.answer(JobWords.folder(words), recording, run, bar);
        }
        JobWords.written(List.of(added.event()), out);
        added.found().ifPresent(found -> Terminal.lines(RunDocument.inShort(found, WarningText.PHRASES))
                .forEach(out::println));
        WarningText.marked(added.warnings()).forEach(out::println);
        return ExitStatus.DONE;
    }

    private static RunSettings settings(ParseResult words) {
        RecordingOptions said = new RecordingOptions(words);
        OptionalDouble tolerance = Options.number(words, "--tolerance").isPresent()
                ? OptionalDouble.of(said.tolerancePercent())
                : OptionalDouble.empty();
        Optional<String> fullScale =
                said.fullScale().isPresent() ? Options.text(words, "--full-scale") : Optional.empty();
        return new RunSettings(
                said.engineRpm(),
                said.propellerRpm(),
                tolerance,
                said.channels(),
                said.markChannel(),
                fullScale,
                said.table());
    }

    private static Conditions conditions(ParseResult words) {
        Conditions conditions = Conditions.NONE;
        for (Condition condition : Condition.values()) {
            Optional<String> value = Options.text(words, "--" + condition.word());
            if (value.isPresent()) {
                conditions = conditions.with(condition, value.get());
            }
        }
        return conditions;
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
        };
    }
}
