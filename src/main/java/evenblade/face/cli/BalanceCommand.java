package evenblade.face.cli;

import evenblade.base.json.JsonWriter;
import evenblade.face.app.BalanceTyped;
import evenblade.judge.balance.BalanceAnswer;
import java.io.PrintWriter;
import java.nio.file.Path;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code evenblade balance}: the weight that runs with and without trial weights call for. */
final class BalanceCommand implements Command {
    @Override
    public void describe(CommandSpec spec) {
        spec.usageMessage()
                .description("Reckon the balance weight from runs with and without trial weights: where, how much, how"
                        + " sure, what will be left; or why not.");
        spec.addOption(Options.needed("--from", "FILE", Path.class, "A file of typed readings (JSON)."));
        spec.addOption(Options.json());
    }

    @Override
    public int run(ParseResult words, PrintWriter out) {
        BalanceAnswer answer = BalanceTyped.answer(Options.path(words, "--from").orElseThrow());
        if (Options.said(words, "--json")) {
            out.print(JsonWriter.write(BalanceJson.of(answer)));
        } else {
            BalanceText.lines(answer).forEach(out::println);
        }
        return ExitStatus.DONE;
    }
}
