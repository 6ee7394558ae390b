package evenblade.face.cli;

import evenblade.base.json.JsonFields;
import evenblade.base.json.JsonWriter;
import evenblade.tell.document.Phrases;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/**
 * A question about a whole job, answered as text or as JSON.
 *
 * @param <A> the answer
 */
abstract class JobQuestionCommand<A> implements Command {
    /** What the command does, in one sentence. */
    abstract String purpose();

    /** Words beside the folder and {@code --json}; none, unless added. */
    void describeMore(CommandSpec spec) {}

    abstract A ask(Path job, ParseResult words);

    abstract JsonFields json(A answer);

    abstract List<String> text(A answer, Phrases phrases);

    /** Draws what was asked for, before anything is printed. */
    void draw(Path job, A answer, Plots plots) {}

    @Override
    public final void describe(CommandSpec spec) {
        spec.usageMessage().description(purpose());
        JobWords.addFolder(spec);
        describeMore(spec);
        spec.addOption(JobUnits.option());
        spec.addOption(Options.json());
    }

    @Override
    public final int run(ParseResult words, PrintWriter out) {
        Path job = JobWords.folder(words);
        Phrases phrases = JobUnits.phrases(job, words);
        Plots plots = Plots.wanted(words);
        A answer = ask(job, words);
        draw(job, answer, plots);
        if (Options.said(words, "--json")) {
            out.print(JsonWriter.write(json(answer)));
        } else {
            text(answer, phrases).forEach(out::println);
        }
        plots.tell(words, out);
        return ExitStatus.DONE;
    }
}
