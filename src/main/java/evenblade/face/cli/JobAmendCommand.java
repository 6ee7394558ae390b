package evenblade.face.cli;

import evenblade.base.problem.BadInput;
import evenblade.face.app.WriteEntry;
import evenblade.keep.job.Conditions;
import evenblade.keep.job.RunSettings;
import java.io.PrintWriter;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code evenblade job amend}: puts right what a run says of itself, by a later entry. */
final class JobAmendCommand implements Command {
    @Override
    public void describe(CommandSpec spec) {
        spec.usageMessage()
                .description("Put right what was said of a run: place, direction, sensor, full scale, speed as read and"
                        + " so on. The run's own entry stays as it is; this one is added with its date.")
                .footer("", "To take it back, cross out the entry that it made (job strike).");
        JobWords.addFolder(spec);
        spec.addPositional(Options.word(1, "RUN", String.class, "The run's id or label."));
        RecordingOptions.addTo(spec);
        ConditionOptions.addTo(spec);
        ConditionOptions.addAnswer(spec);
        JobWords.addRemark(spec);
        JobWords.addTime(spec);
    }

    @Override
    public int run(ParseResult words, PrintWriter out) {
        RunSettings settings = JobAddCommand.settings(words);
        Conditions conditions = ConditionOptions.answered(ConditionOptions.of(words), words);
        if (settings.equals(RunSettings.NONE) && conditions.equals(Conditions.NONE)) {
            throw BadInput.in("job amend").found("nothing to put right", "an option like --place or --full-scale");
        }
        return JobWords.written(
                JobWords.folder(words),
                List.of(WriteEntry.amend(
                        JobWords.folder(words),
                        words.matchedPositionalValue(1, ""),
                        settings,
                        conditions,
                        JobWords.remark(words),
                        JobWords.time(words))),
                out);
    }
}
