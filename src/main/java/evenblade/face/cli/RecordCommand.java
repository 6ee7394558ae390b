package evenblade.face.cli;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Warning;
import evenblade.base.problem.BadInput;
import evenblade.face.app.LiveRecording;
import evenblade.face.app.RecordLines;
import evenblade.face.app.RecordRun;
import evenblade.input.capture.SerialLine;
import evenblade.keep.job.Conditions;
import evenblade.keep.job.NewRun;
import evenblade.keep.job.RunSettings;
import evenblade.measure.live.SteppedRun;
import java.io.InputStream;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code evenblade record}: a ground run from microphone or line in. */
final class RecordCommand implements Command {
    private static final int USUAL_BAUD = 115_200;

    @Override
    public void describe(CommandSpec spec) {
        spec.usageMessage()
                .description("Record a ground run from a microphone or line input. Ctrl-C ends it; everything up to"
                        + " then is kept.");
        spec.addPositional(
                Options.word(0, "DIR|FILE", Path.class, "A job folder, which takes the run in, or a new .wav file."));
        InputWords.addTo(spec);
        spec.addOption(Options.value("--label", "TEXT", String.class, "A short name for the run."));
        spec.addOption(Options.value(
                "--installation",
                "FILE",
                Path.class,
                "What runs, to see speed and orders while it records. A job knows its own."));
        spec.addOption(Options.flag(
                "--steps",
                "Lead through the dwells of the plan, one after the other, and say when each was held long enough."));
        spec.addOption(Options.repeated(
                "--engine-rpm", "RPM", Double.class, "With --steps: hold this speed; may be repeated."));
        spec.addOption(Options.value(
                "--wanted",
                "PCT",
                Double.class,
                "With --steps: 95 %% interval wanted of 1x and blade pass, plus or minus percent (5)."));
        spec.addOption(Options.flag(
                "--beep",
                "With --steps: beep when a step is done, three times when all are. The microphone hears it."));
        spec.addOption(Options.flag(
                "--lines",
                "Record lines of CSV from standard input, as an accelerometer sends them, into a .csv file."));
        spec.addOption(Options.value("--serial", "PORT", String.class, "The same from a serial port."));
        spec.addOption(Options.value("--baud", "N", Integer.class, "Speed of the serial port (115200)."));
        JobWords.addRemark(spec);
    }

    @Override
    public int run(ParseResult words, PrintWriter out) {
        LiveRecording run = Options.said(words, "--lines") || Options.said(words, "--serial")
                ? RecordLines.prepare(lines(words))
                : RecordRun.prepare(request(words));
        tell(run.leftovers(), out);
        out.println("Recording from " + run.device());
        out.println("into " + run.file() + "; Ctrl-C ends it.");
        out.flush();
        CleanEnd end = CleanEnd.by(run::stop, out);
        LiveLine line = LiveLine.show(run::view, () -> "", out);
        try {
            LiveRecording.Recorded recorded = run.record();
            line.close();
            tell(recorded, out);
        } finally {
            line.close();
            out.flush();
            end.close();
        }
        return ExitStatus.DONE;
    }

    private static RecordLines.Request lines(ParseResult words) {
        Optional<String> port = Options.text(words, "--serial");
        Optional<String> mark = Options.text(words, "--mark-channel");
        int baud = InputWords.positive(words, "--baud").orElse(USUAL_BAUD);
        InputStream input = port.map(name -> SerialLine.open(name, baud)).orElse(System.in);
        return new RecordLines.Request(
                words.matchedPositionalValue(0, (Path) null),
                input,
                port.map(name -> "serial port " + name + ", " + baud + " baud").orElse("lines on standard input"),
                Options.number(words, "--seconds"),
                new NewRun(
                        Optional.empty(),
                        Options.text(words, "--label"),
                        JobWords.remark(words),
                        mark.map(RunSettings.NONE::withMarkChannel).orElse(RunSettings.NONE),
                        Conditions.NONE),
                Options.path(words, "--installation"),
                Options.path(words, "--quiet-take"),
                Options.said(words, "--steps") ? Optional.of(steps(words)) : Optional.empty());
    }

    private static RecordRun.Request request(ParseResult words) {
        Optional<String> mark = Options.text(words, "--mark-channel");
        RunSettings settings = mark.map(RunSettings.NONE::withMarkChannel).orElse(RunSettings.NONE);
        return new RecordRun.Request(
                words.matchedPositionalValue(0, (Path) null),
                Options.text(words, "--device"),
                InputWords.wish(words),
                Options.number(words, "--seconds"),
                new NewRun(
                        Optional.empty(),
                        Options.text(words, "--label"),
                        JobWords.remark(words),
                        settings,
                        Conditions.NONE),
                Options.path(words, "--installation"),
                Options.path(words, "--quiet-take"),
                Options.said(words, "--steps") ? Optional.of(steps(words)) : Optional.empty());
    }

    private static RecordRun.Steps steps(ParseResult words) {
        double wanted = Options.number(words, "--wanted").orElse(SteppedRun.USUAL_PERCENT);
        if (!(wanted > 0 && wanted <= 100)) {
            throw BadInput.in("--wanted").found(String.valueOf(wanted), "a percentage above 0 and at most 100");
        }
        return new RecordRun.Steps(Options.all(words, "--engine-rpm"), wanted, Options.said(words, "--beep"));
    }

    private static void tell(LiveRecording.Recorded recorded, PrintWriter out) {
        out.println(String.format(
                Locale.ROOT,
                "%s: %.2f s, %s",
                capital(WarningText.of(Fact.of(recorded.ending()))),
                recorded.durationS(),
                recorded.lostS() == 0
                        ? "no sample missing by the clock"
                        : String.format(Locale.ROOT, "%.2f s missing by the clock", recorded.lostS())));
        recorded.event().ifPresent(event -> JobText.written(event).forEach(out::println));
        if (recorded.event().isEmpty()) {
            out.println(recorded.file().toString());
        }
        tell(recorded.warnings(), out);
    }

    static void tell(List<Warning> warnings, PrintWriter out) {
        WarningText.marked(warnings).forEach(out::println);
    }

    static String capital(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }
}
