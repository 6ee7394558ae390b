package evenblade.face.cli;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Warning;
import evenblade.base.problem.BadInput;
import evenblade.base.units.FullScale;
import evenblade.face.app.LiveRecording;
import evenblade.face.app.RecordLines;
import evenblade.face.app.RecordRun;
import evenblade.input.capture.SerialLine;
import evenblade.keep.job.NewRun;
import evenblade.keep.job.RunSettings;
import evenblade.measure.live.SteppedRun;
import evenblade.tell.document.FigureFormat;
import java.io.InputStream;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code evenblade record}: a ground run from microphone or line in. */
final class RecordCommand implements Command {
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
        spec.addOption(
                Options.flag(
                        "--steps",
                        "Lead through the dwells of the plan, in any order, and say when each was held long enough. s and Enter"
                                + " leaves one for later, r and Enter does the last one again (not where the lines come from standard input)."));
        spec.addOption(Options.repeated(
                "--engine-rpm",
                "RPM",
                Double.class,
                "Engine speed as read in the cockpit. With --steps: hold this speed; may be repeated."));
        spec.addOption(Options.value("--propeller-rpm", "RPM", Double.class, "Propeller speed as read."));
        spec.addOption(Options.value(
                "--full-scale",
                "VALUE",
                String.class,
                "What the largest sample stands for, such as \"50 m/s2\", \"8 g\" or \"2 V\"."));
        ConditionOptions.addToRecording(spec);
        TakenOver.addTo(spec, "into a job, a run by the same input");
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
        LiveRecording run = prepare(words);
        tell(run.leftovers(), out);
        out.println("Recording from " + run.device());
        out.println("into " + run.file() + "; Ctrl-C ends it.");
        TakenOver.lines(run.before()).forEach(out::println);
        boolean steps = Options.said(words, "--steps");
        boolean typing = !Options.said(words, "--lines") || Options.said(words, "--serial");
        if (steps) {
            out.println(typing ? StepKeys.HELP : StepKeys.NO_KEYS);
        }
        out.flush();
        CleanEnd end = CleanEnd.by(run::stop, out);
        LiveLine line = LiveLine.show(run::view, () -> "", run::urgent, out);
        StepKeys typed = StepKeys.listen(
                () -> next(run, LiveRecording::skipStep, out),
                () -> next(run, LiveRecording::repeatStep, out),
                steps && typing ? System.in : InputStream.nullInputStream());
        try {
            LiveRecording.Recorded recorded = run.record();
            line.close();
            tell(words.matchedPositionalValue(0, (Path) null), recorded, out);
            refuseCutShort(run, recorded);
        } finally {
            typed.close();
            line.close();
            out.flush();
            end.close();
        }
        return ExitStatus.DONE;
    }

    private static void next(LiveRecording run, Consumer<LiveRecording> asked, PrintWriter out) {
        asked.accept(run);
        out.println(LiveText.next(run.view().step()));
        out.flush();
    }

    private static LiveRecording prepare(ParseResult words) {
        if (Options.said(words, "--lines") || Options.said(words, "--serial")) {
            return TakenOver.wanted(words)
                    ? RecordLines.prepareLikeBefore(lines(words))
                    : RecordLines.prepare(lines(words));
        }
        return TakenOver.wanted(words)
                ? RecordRun.prepareLikeBefore(request(words))
                : RecordRun.prepare(request(words));
    }

    /** A take that something cut short is kept, and is no success. */
    private static void refuseCutShort(LiveRecording run, LiveRecording.Recorded recorded) {
        if (recorded.ending().unwanted()) {
            throw BadInput.in(run.device())
                    .found(
                            WarningText.of(Fact.of(recorded.ending())) + " after "
                                    + FigureFormat.fixed(recorded.durationS(), 1) + " s",
                            "an input and a disk that last"
                                    + (Files.exists(recorded.file())
                                                    || recorded.event().isPresent()
                                            ? "; what came until then is kept"
                                            : "")
                                    + recorded.event().map(e -> " as " + e.id()).orElse(""));
        }
    }

    private static RecordLines.Request lines(ParseResult words) {
        Optional<String> port = Options.text(words, "--serial");
        int baud = InputWords.positive(words, "--baud").orElse(SerialLine.USUAL_BAUD);
        InputStream input = port.map(name -> SerialLine.open(name, baud)).orElse(System.in);
        return new RecordLines.Request(
                words.matchedPositionalValue(0, (Path) null),
                input,
                port.map(name -> "serial port " + name + ", " + baud + " baud").orElse("lines on standard input"),
                Options.number(words, "--seconds"),
                newRun(words),
                Options.path(words, "--installation"),
                Options.path(words, "--quiet-take"),
                Options.said(words, "--steps") ? Optional.of(steps(words)) : Optional.empty());
    }

    private static RecordRun.Request request(ParseResult words) {
        return new RecordRun.Request(
                words.matchedPositionalValue(0, (Path) null),
                Options.text(words, "--device"),
                InputWords.wish(words),
                Options.number(words, "--seconds"),
                newRun(words),
                Options.path(words, "--installation"),
                Options.path(words, "--quiet-take"),
                Options.said(words, "--steps") ? Optional.of(steps(words)) : Optional.empty());
    }

    /** What is said of the run, as 'job add' takes it. */
    private static NewRun newRun(ParseResult words) {
        RunSettings settings = RunSettings.NONE;
        Optional<String> mark = Options.text(words, "--mark-channel");
        Optional<String> fullScale = Options.text(words, "--full-scale");
        fullScale.ifPresent(text -> FullScale.parse(text, BadInput.in("--full-scale")));
        settings = mark.isPresent() ? settings.withMarkChannel(mark.get()) : settings;
        settings = fullScale.isPresent() ? settings.withFullScale(fullScale.get()) : settings;
        return new NewRun(
                Optional.empty(),
                Options.text(words, "--label"),
                JobWords.remark(words),
                withSpeed(settings, words),
                ConditionOptions.ofRecording(words));
    }

    private static RunSettings withSpeed(RunSettings settings, ParseResult words) {
        List<Double> engine = Options.said(words, "--steps") ? List.of() : Options.all(words, "--engine-rpm");
        OptionalDouble propeller = Options.number(words, "--propeller-rpm");
        if (engine.size() + (propeller.isPresent() ? 1 : 0) > 1) {
            throw BadInput.in("--engine-rpm")
                    .found("more than one speed", "one speed as read, or --steps with speeds to hold");
        }
        if (propeller.isPresent()) {
            return settings.withPropellerRpm(speed("--propeller-rpm", propeller.getAsDouble()));
        }
        return engine.isEmpty() ? settings : settings.withEngineRpm(speed("--engine-rpm", engine.get(0)));
    }

    private static double speed(String option, double rpm) {
        if (!(rpm > 0 && Double.isFinite(rpm))) {
            throw BadInput.in(option).found(String.valueOf(rpm), "a speed in rpm above zero");
        }
        return rpm;
    }

    private static RecordRun.Steps steps(ParseResult words) {
        double wanted = Options.number(words, "--wanted").orElse(SteppedRun.USUAL_PERCENT);
        if (!(wanted > 0 && wanted <= 100)) {
            throw BadInput.in("--wanted").found(String.valueOf(wanted), "a percentage above 0 and at most 100");
        }
        return new RecordRun.Steps(Options.all(words, "--engine-rpm"), wanted, Options.said(words, "--beep"));
    }

    private static void tell(Path target, LiveRecording.Recorded recorded, PrintWriter out) {
        out.println(capital(WarningText.of(Fact.of(recorded.ending()))) + ": "
                + FigureFormat.fixed(recorded.durationS(), 2) + " s, "
                + (recorded.lostS() == 0
                        ? "no sample missing by the clock"
                        : FigureFormat.fixed(recorded.lostS(), 2) + " s missing by the clock"));
        recorded.event().ifPresent(event -> JobWords.written(target, List.of(event), out));
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
