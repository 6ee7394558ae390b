package evenblade.face.cli;

import evenblade.base.json.JsonWriter;
import evenblade.face.app.CompareRuns;
import evenblade.face.app.DrawComparison;
import evenblade.face.app.WritePictures;
import evenblade.tell.document.ComparisonDocument;
import evenblade.tell.document.Document;
import evenblade.tell.document.Phrases;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code evenblade compare}: what changed from one run of a job to another. */
final class CompareCommand implements Command {
    @Override
    public void describe(CommandSpec spec) {
        spec.usageMessage()
                .description("Hold one run of a job against another: what fell, what rose, what shows no change.");
        JobWords.addFolder(spec);
        spec.addPositional(Options.word(1, "BEFORE", String.class, "The first run: its id or its label."));
        spec.addPositional(Options.word(2, "AFTER", String.class, "The second run."));
        spec.addOption(WantedSpeed.option());
        Plots.addTo(spec);
        spec.addOption(JobUnits.option());
        spec.addOption(Options.json());
    }

    @Override
    public int run(ParseResult words, PrintWriter out) {
        OptionalDouble engineRpm = WantedSpeed.of(words);
        Phrases phrases = JobUnits.phrases(JobWords.folder(words), words);
        Plots plots = Plots.wanted(words);
        CompareRuns.Answer answer = CompareRuns.compare(
                JobWords.folder(words),
                words.matchedPositionalValue(1, ""),
                words.matchedPositionalValue(2, ""),
                engineRpm);
        plots.draw(folder -> drawn(JobWords.folder(words), answer, folder));
        boolean json = Options.said(words, "--json");
        if (json) {
            out.print(JsonWriter.write(CompareJson.of(answer)));
        } else {
            Document document = Document.begin()
                    .invented(answer.invented())
                    .addAll(ComparisonDocument.of(
                            answer.comparison(),
                            answer.changes(),
                            answer.warnings(),
                            ComparisonDocument.Extent.ALL,
                            phrases))
                    .done();
            Terminal.lines(document).forEach(out::println);
            CompareCures.lines(JobWords.folder(words), answer).forEach(out::println);
        }
        plots.tell(words, out);
        return ExitStatus.DONE;
    }

    private static List<Path> drawn(Path job, CompareRuns.Answer answer, Path folder) {
        String stem = "compare-" + answer.before().id() + "-" + answer.after().id();
        return WritePictures.write(
                DrawComparison.prepare(job, answer)
                        .map(two -> two.telling().byName())
                        .orElse(Map.of()),
                stem,
                folder);
    }
}
