package evenblade.face.cli;

import evenblade.base.json.JsonFields;
import evenblade.face.app.DrawTracking;
import evenblade.face.app.JudgeTracking;
import evenblade.face.app.WritePictures;
import evenblade.judge.tracking.StaticSide;
import evenblade.tell.document.Document;
import evenblade.tell.document.Phrases;
import evenblade.tell.document.TrackingDocument;
import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code evenblade tracking}: what the tip marks of a job say together. */
final class TrackingCommand extends JobQuestionCommand<StaticSide> {
    @Override
    String purpose() {
        return "Weigh the tip marks of a job: which blade, which hub position, what to try next.";
    }

    @Override
    void describeMore(CommandSpec spec) {
        Plots.addTo(spec);
    }

    @Override
    void draw(Path job, StaticSide answer, Plots plots) {
        if (!answer.sessions().isEmpty()) {
            plots.draw(folder -> WritePictures.write(DrawTracking.all(job, answer), "tracking", folder));
        }
    }

    @Override
    StaticSide ask(Path job, ParseResult words) {
        return JudgeTracking.judge(job);
    }

    @Override
    JsonFields json(StaticSide answer) {
        return TrackingJson.of(answer);
    }

    @Override
    List<String> text(StaticSide answer, Phrases phrases) {
        return Terminal.lines(Document.begin()
                .subject(answer.job())
                .invented(answer.invented())
                .addAll(TrackingDocument.of(answer, phrases))
                .known("next", "how much of the shaking goes with track, once there are runs: evenblade findings DIR")
                .done());
    }
}
