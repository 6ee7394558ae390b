package evenblade.face.cli;

import evenblade.base.json.JsonWriter;
import evenblade.face.app.AnalyseRecording;
import evenblade.face.app.AnalysedRecording;
import evenblade.face.app.AnalysisRequest;
import evenblade.face.app.WritePictures;
import evenblade.machine.installation.InstallationFile;
import evenblade.tell.document.RunDocument;
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
        Plots.addTo(spec);
        spec.addOption(Options.json());
    }

    @Override
    public int run(ParseResult words, PrintWriter out) {
        Path recording = words.matchedPositionalValue(0, Path.of(""));
        Path installation = Options.path(words, "--installation").orElseThrow();
        boolean json = Options.said(words, "--json");
        Plots plots = Plots.wanted(words);
        AnalysisRequest request = new RecordingOptions(words).request(recording, InstallationFile.read(installation));
        AnalysedRecording analysed;
        try (WorkBar bar = new WorkBar()) {
            analysed = AnalyseRecording.analyse(request, bar);
        }
        plots.draw(folder -> WritePictures.write(analysed, folder));
        if (json) {
            out.print(JsonWriter.write(OrdersJson.of(analysed.orders())));
        } else {
            Terminal.lines(RunDocument.of(analysed.orders(), RunDocument.Extent.ALL, WarningText.PHRASES))
                    .forEach(out::println);
        }
        plots.tell(words, out);
        return ExitStatus.DONE;
    }
}
