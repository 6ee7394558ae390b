package evenblade.cli;

import evenblade.app.AnalyseRecording;
import evenblade.app.AnalysedRecording;
import evenblade.app.AnalysisRequest;
import evenblade.installation.InstallationFile;
import evenblade.json.JsonWriter;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code evenblade orders}: speed, dwells and orders of one recording. */
final class OrdersCommand implements Command {
    @Override
    public void describe(CommandSpec spec) {
        spec.usageMessage()
                .description("Find the speed in a recording of a ground run and measure every order of propeller and"
                        + " engine.");
        spec.addPositional(Options.word(0, "RECORDING", Path.class, "WAV, AIFF, AU, FLAC, or CSV with time stamps."));
        spec.addOption(Options.installation());
        RecordingOptions.addTo(spec);
        spec.addOption(Options.json());
    }

    @Override
    public int run(ParseResult words, PrintWriter out) throws IOException {
        Path recording = words.matchedPositionalValue(0, Path.of(""));
        Path installation = Options.path(words, "--installation").orElseThrow();
        AnalysisRequest request = new RecordingOptions(words).request(recording, InstallationFile.read(installation));
        AnalysedRecording analysed = AnalyseRecording.answer(request);
        if (Options.said(words, "--json")) {
            out.print(JsonWriter.write(OrdersJson.of(analysed.orders())));
        } else {
            OrdersText.lines(analysed.orders()).forEach(out::println);
        }
        return ExitStatus.DONE;
    }
}
