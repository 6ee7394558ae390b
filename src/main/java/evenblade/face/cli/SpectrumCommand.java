package evenblade.face.cli;

import evenblade.base.json.JsonWriter;
import evenblade.base.problem.BadInput;
import evenblade.base.units.FullScale;
import evenblade.face.app.LookAtRecording;
import evenblade.face.app.LookAtRecording.LookedAt;
import evenblade.face.app.SpectrumRequest;
import evenblade.face.app.WritePictures;
import evenblade.machine.installation.InstallationFile;
import evenblade.tell.document.SpectrumDocument;
import java.io.PrintWriter;
import java.nio.file.Path;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code evenblade spectrum}: the averaged spectrum of any recording and the steady lines in it. */
final class SpectrumCommand implements Command {
    @Override
    public void describe(CommandSpec spec) {
        spec.usageMessage()
                .description(
                        "Look at any recording: its averaged spectrum and its steady lines with their amplitudes. No"
                                + " installation and no job are needed.");
        spec.addPositional(Options.word(0, "RECORDING", Path.class, "WAV, AIFF, AU, FLAC, or CSV with time stamps."));
        spec.addOption(Options.value(
                "--installation",
                "FILE",
                Path.class,
                "Find the speed too, and name the orders that the lines may be."));
        spec.addOption(Options.value("--from", "S", Double.class, "Begin so many seconds into the recording."));
        spec.addOption(Options.value("--to", "S", Double.class, "End there."));
        spec.addOption(Options.value(
                "--channel", "CHANNEL", String.class, "Look at this channel, by name or by number from 1."));
        spec.addOption(Options.value("--up-to", "HZ", Double.class, "Look no higher than this frequency."));
        spec.addOption(Options.value(
                "--full-scale",
                "VALUE",
                String.class,
                "What the largest sample stands for, such as \"50 m/s2\", \"8 g\" or \"2 V\"."));
        TableOptions.addTo(spec);
        Plots.addTo(spec);
        spec.addOption(Options.json());
    }

    @Override
    public int run(ParseResult words, PrintWriter out) {
        boolean json = Options.said(words, "--json");
        Plots plots = Plots.wanted(words);
        SpectrumRequest request = request(words);
        LookedAt looked;
        try (WorkBar bar = new WorkBar()) {
            looked = LookAtRecording.look(request, bar);
        }
        plots.draw(folder -> WritePictures.spectrum(looked, folder));
        if (json) {
            out.print(JsonWriter.write(SpectrumJson.of(looked)));
        } else {
            Terminal.lines(SpectrumDocument.of(looked.spectrum(), looked.run(), looked.dwell(), WarningText.PHRASES))
                    .forEach(out::println);
        }
        plots.tell(words, out);
        return ExitStatus.DONE;
    }

    private static SpectrumRequest request(ParseResult words) {
        return new SpectrumRequest(
                words.matchedPositionalValue(0, Path.of("")),
                Options.path(words, "--installation").map(InstallationFile::read),
                Options.number(words, "--from"),
                Options.number(words, "--to"),
                Options.number(words, "--up-to"),
                Options.text(words, "--channel"),
                Options.text(words, "--full-scale").map(text -> FullScale.parse(text, BadInput.in("--full-scale"))),
                TableOptions.of(words));
    }
}
