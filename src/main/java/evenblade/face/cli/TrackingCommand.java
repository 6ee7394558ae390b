package evenblade.face.cli;

import evenblade.base.json.JsonFields;
import evenblade.face.app.JudgeTracking;
import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.ParseResult;

/** {@code evenblade tracking}: what the tip marks of a job say together. */
final class TrackingCommand extends JobQuestionCommand<JudgeTracking.TrackView> {
    @Override
    String purpose() {
        return "Weigh the tip marks of a job: which blade, which hub position, what to try next.";
    }

    @Override
    JudgeTracking.TrackView ask(Path job, ParseResult words) {
        return JudgeTracking.answer(job);
    }

    @Override
    JsonFields json(JudgeTracking.TrackView answer) {
        return TrackingJson.of(answer);
    }

    @Override
    List<String> text(JudgeTracking.TrackView answer) {
        return TrackingText.lines(answer);
    }
}
