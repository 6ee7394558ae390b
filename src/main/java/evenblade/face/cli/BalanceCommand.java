package evenblade.face.cli;

import evenblade.base.json.JsonWriter;
import evenblade.base.units.LengthUnit;
import evenblade.face.app.BalanceAtRest;
import evenblade.face.app.BalanceJob;
import evenblade.face.app.BalanceSheet;
import evenblade.face.app.DrawBalance;
import evenblade.face.app.JobBalance;
import evenblade.face.app.JobParticulars;
import evenblade.face.app.WritePictures;
import evenblade.judge.balance.BalanceAnswer;
import evenblade.tell.document.FigureFormat;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/** {@code evenblade balance}: the weight that runs with and without trial weights call for. */
final class BalanceCommand implements Command {
    @Override
    public void describe(CommandSpec spec) {
        spec.usageMessage()
                .description("Reckon the balance weight from runs with and without trial weights: where, how much, how"
                        + " sure, what will be left; or why not.");
        spec.addPositional(PositionalParamSpec.builder()
                .index("0")
                .arity("0..1")
                .paramLabel("DIR")
                .type(Path.class)
                .description("The job folder.")
                .build());
        spec.addOption(
                Options.value("--from", "FILE", Path.class, "Instead of a job's runs: a file of typed readings (JSON). With weighed blades and a job, the layouts are"
                        + " looked at together with its tip marks."));
        spec.addOption(Options.value(
                "--engine-rpm",
                "N",
                Double.class,
                "Balance at this engine speed. Left out: the highest that most runs have in common."));
        spec.addOption(Options.value(
                "--channel", "C", String.class, "Name or number of the channel. Left out: the one to look at first."));
        spec.addOption(JobUnits.option());
        spec.addOption(Options.plots());
        spec.addOption(Options.json());
    }

    @Override
    public int run(ParseResult words, PrintWriter out) {
        Optional<Path> job = Optional.ofNullable(words.matchedPositionalValue(0, (Path) null));
        Optional<Path> file = Options.path(words, "--from");
        if (job.isEmpty() && file.isEmpty()) {
            throw usage(words);
        }
        boolean json = Options.said(words, "--json");
        if (file.isPresent()) {
            Optional<BalanceAtRest> rest = BalanceAtRest.read(file.get(), job);
            if (rest.isPresent()) {
                if (json) {
                    out.print(JsonWriter.write(BalanceJson.of(rest.get())));
                } else {
                    LengthUnit unit = job.map(j -> JobParticulars.units(j, JobUnits.wanted(words)))
                            .orElse(LengthUnit.MILLIMETRE);
                    Terminal.lines(rest.get().document(new FigureFormat(unit))).forEach(out::println);
                }
                return ExitStatus.DONE;
            }
            if (job.isPresent()) {
                throw usage(words);
            }
            BalanceAnswer answer = BalanceJob.ofReadings(file.get());
            if (json) {
                out.print(JsonWriter.write(BalanceJson.of(answer)));
            } else {
                Terminal.lines(BalanceSheet.of(answer).document()).forEach(out::println);
            }
            return ExitStatus.DONE;
        }
        Optional<Path> plots = Options.path(words, "--plots");
        plots.ifPresent(WritePictures::requireFolder);
        JobBalance balance = BalanceJob.balance(
                job.orElseThrow(), Options.number(words, "--engine-rpm"), Options.text(words, "--channel"));
        FigureFormat lengths = new FigureFormat(JobParticulars.units(job.get(), JobUnits.wanted(words)));
        List<Path> written = plots.isPresent()
                ? WritePictures.write(DrawBalance.draw(balance, lengths), "balance", plots.get())
                : List.of();
        if (json) {
            out.print(JsonWriter.write(BalanceJson.of(balance)));
        } else {
            WarningText.marked(balance.warnings()).forEach(out::println);
            Terminal.lines(BalanceSheet.of(balance, lengths).document()).forEach(out::println);
            written.forEach(picture -> out.println("picture: " + picture));
        }
        return ExitStatus.DONE;
    }

    private static ParameterException usage(ParseResult words) {
        return new ParameterException(
                words.commandSpec().commandLine(),
                "name a job folder, or a file of readings with --from; both together only where it holds weighed blades");
    }
}
