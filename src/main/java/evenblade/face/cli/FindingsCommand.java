package evenblade.face.cli;

import evenblade.base.json.JsonFields;
import evenblade.face.app.DrawTie;
import evenblade.face.app.JobParticulars;
import evenblade.face.app.WeighFindings;
import evenblade.face.app.WritePictures;
import evenblade.tell.document.Document;
import evenblade.tell.document.FindingsDocument;
import evenblade.tell.document.Phrases;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code evenblade findings}: what a job's measurements point to. */
final class FindingsCommand extends JobQuestionCommand<WeighFindings.Answer> {
    @Override
    String purpose() {
        return "Weigh all that a job has measured: what it points to, how surely, what to do next.";
    }

    @Override
    void describeMore(CommandSpec spec) {
        Plots.addTo(spec);
    }

    @Override
    void draw(Path job, WeighFindings.Answer answer, Plots plots) {
        answer.tie()
                .ifPresent(tie -> plots.draw(folder -> WritePictures.write(
                        DrawTie.named(tie, answer.invented(), JobParticulars.units(job, Optional.empty())),
                        "findings",
                        folder)));
    }

    @Override
    WeighFindings.Answer ask(Path job, ParseResult words) {
        return WeighFindings.weigh(job);
    }

    @Override
    JsonFields json(WeighFindings.Answer answer) {
        return FindingsJson.of(answer);
    }

    @Override
    List<String> text(WeighFindings.Answer answer, Phrases phrases) {
        return Terminal.lines(Document.begin()
                .subject(answer.job())
                .invented(answer.invented())
                .addAll(FindingsDocument.of(answer.findings().list(), answer.tie(), answer.warnings(), phrases))
                .done());
    }
}
