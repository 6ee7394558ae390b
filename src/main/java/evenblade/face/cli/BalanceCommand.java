package evenblade.face.cli;

import evenblade.base.json.JsonWriter;
import evenblade.face.app.BalanceJob;
import evenblade.face.app.BalanceTyped;
import evenblade.face.app.DrawBalance;
import evenblade.face.app.WritePictures;
import evenblade.judge.balance.BalanceAnswer;
import evenblade.judge.balance.BalanceAtRest;
import evenblade.judge.balance.JobBalance;
import evenblade.tell.document.BalanceDocument;
import evenblade.tell.document.Phrases;
import java.io.PrintWriter;
import java.nio.file.Path;
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
        spec.addOption(Options.value(
                "--from",
                "FILE",
                Path.class,
                "Instead of a job's runs: a file of typed readings (JSON). With weighed blades and a job, the"
                        + " layouts are looked at together with its tip marks."));
        spec.addOption(Options.value(
                "--engine-rpm",
                "N",
                Double.class,
                "Balance at this engine speed. Left out: the highest that most runs have in common."));
        spec.addOption(Options.value(
                "--channel", "C", String.class, "Name or number of the channel. Left out: the one to look at first."));
        spec.addOption(JobUnits.option());
        Plots.addTo(spec);
        spec.addOption(Options.json());
    }

    @Override
    public int run(ParseResult words, PrintWriter out) {
        Optional<Path> job = Optional.ofNullable(words.matchedPositionalValue(0, (Path) null));
        Optional<Path> file = Options.path(words, "--from");
        if (job.isEmpty() && file.isEmpty()) {
            throw usage(words);
        }
        Phrases phrases = job.map(folder -> JobUnits.phrases(folder, words)).orElse(WarningText.PHRASES);
        boolean json = Options.said(words, "--json");
        if (file.isPresent()) {
            Optional<BalanceAtRest> rest = BalanceTyped.atRest(file.get(), job);
            if (rest.isPresent()) {
                if (json) {
                    out.print(JsonWriter.write(BalanceJson.of(rest.get())));
                } else {
                    Terminal.lines(BalanceDocument.of(rest.get(), phrases)).forEach(out::println);
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
                Terminal.lines(BalanceDocument.of(answer, phrases)).forEach(out::println);
            }
            return ExitStatus.DONE;
        }
        Plots plots = Plots.wanted(words);
        JobBalance balance = BalanceJob.balance(
                job.orElseThrow(), Options.number(words, "--engine-rpm"), Options.text(words, "--channel"));
        plots.draw(folder -> WritePictures.write(DrawBalance.draw(balance, phrases.figures()), "balance", folder));
        if (json) {
            out.print(JsonWriter.write(BalanceJson.of(balance)));
        } else {
            Terminal.lines(BalanceDocument.of(balance, phrases)).forEach(out::println);
        }
        plots.tell(words, out);
        return ExitStatus.DONE;
    }

    private static ParameterException usage(ParseResult words) {
        return new ParameterException(
                words.commandSpec().commandLine(),
                "name a job folder, or a file of readings with --from; both together only where it holds weighed blades");
    }
}
