package evenblade.face.cli;

import evenblade.face.app.AddRun;
import evenblade.face.app.RunBefore;
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
        spec.addPositional(Options.word(
                1,
                "RECORDING",
                Path.class,
                "A WAV, AIFF, AU, FLAC or CSV file; from a phone: M4A, MP4, MP3 or OGG too."));
        spec.addOption(Options.value("--label", "TEXT", String.class, "A short name for the run, like \"before\"."));
        RecordingOptions.addTo(spec);
        ConditionOptions.addTo(spec);
        TakenOver.addTo(spec, "a recording of the same shape");
        JobWords.addRemark(spec);
        JobWords.addTime(spec);
    }

    @Override
    public int run(ParseResult words, PrintWriter out) {
        Path recording = words.matchedPositionalValue(1, (Path) null);
        NewRun said = new NewRun(
                JobWords.time(words),
                Options.text(words, "--label"),
                JobWords.remark(words),
                settings(words),
                ConditionOptions.of(words));
        Optional<RunBefore> before =
                TakenOver.wanted(words) ? RunBefore.of(JobWords.folder(words), recording, said) : Optional.empty();
        NewRun run = before.map(each -> each.into(said)).orElse(said);
        AddRun.Added added;
        try (WorkBar bar = new WorkBar()) {
            added = AddRun.add(JobWords.folder(words), recording, run, bar);
        }
        JobWords.written(JobWords.folder(words), List.of(added.event()), out);
        TakenOver.lines(before).forEach(out::println);
        added.found().ifPresent(found -> Terminal.lines(RunDocument.inShort(found, WarningText.PHRASES))
                .forEach(out::println));
        WarningText.marked(added.warnings()).forEach(out::println);
        return ExitStatus.DONE;
    }

    /** How a run is to be analysed, as far as it was said. */
    static RunSettings settings(ParseResult words) {
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
}
