package evenblade.face.cli;

import evenblade.base.json.JsonFields;
import evenblade.face.app.DrawTrend;
import evenblade.face.app.ShowTrend;
import evenblade.face.app.WritePictures;
import evenblade.tell.document.Block.Tone;
import evenblade.tell.document.Document;
import evenblade.tell.document.Phrases;
import evenblade.tell.document.TrendDocument;
import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code evenblade trend}: every figure over all runs of a job. */
final class TrendCommand extends JobQuestionCommand<ShowTrend.Answer> {
    @Override
    String purpose() {
        return "Follow every figure over all runs of a job, with what was changed between them.";
    }

    @Override
    void describeMore(CommandSpec spec) {
        spec.addOption(WantedSpeed.option());
        Plots.addTo(spec);
    }

    @Override
    ShowTrend.Answer ask(Path job, ParseResult words) {
        return ShowTrend.follow(job, WantedSpeed.of(words));
    }

    @Override
    void draw(Path job, ShowTrend.Answer answer, Plots plots) {
        plots.draw(folder -> WritePictures.write(DrawTrend.all(job, answer), "trend", folder));
    }

    @Override
    JsonFields json(ShowTrend.Answer answer) {
        return TrendJson.of(answer);
    }

    @Override
    List<String> text(ShowTrend.Answer answer, Phrases phrases) {
        Document.Builder text = Document.begin().subject(answer.name()).invented(answer.invented());
        if (answer.channels().isEmpty()) {
            text.say("No run with a dwell at a confirmed speed yet: nothing to follow.");
        } else {
            text.addAll(TrendDocument.of(answer.channels().get(0), phrases));
        }
        if (answer.channels().size() > 1) {
            text.say(
                    Tone.NOTE,
                    "Channel '" + answer.channels().get(0).channel()
                            + "' shakes most at propeller 1× and is shown; --json has all "
                            + answer.channels().size() + ".");
        }
        text.warnings(Tone.CAUTION, phrases, answer.warnings());
        return Terminal.lines(text.done());
    }
}
