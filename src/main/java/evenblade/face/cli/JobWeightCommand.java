package evenblade.face.cli;

import evenblade.base.fact.Worded;
import evenblade.face.app.WriteEntry;
import evenblade.keep.job.HubWeight;
import evenblade.machine.installation.HubCounting;
import evenblade.tell.document.Document;
import java.io.PrintWriter;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/** {@code evenblade job weight}: a balance weight put on or taken off, and how angles on the hub are counted. */
final class JobWeightCommand implements Command {
    private static final List<String> OF_A_WEIGHT = List.of("--mass", "--radius", "--angle");

    @Override
    public void describe(CommandSpec spec) {
        spec.usageMessage()
                .description(
                        "Write down a weight that was put on the hub or taken off. Runs after it count as made with"
                                + " the weights that are on then.");
        JobWords.addFolder(spec);
        spec.addOption(Options.value("--mass", "MASS", String.class, "What it weighs, like \"10 g\" or \"1/4 oz\"."));
        spec.addOption(Options.value(
                "--radius", "LENGTH", String.class, "Of its middle from the shaft's, like \"60 mm\" or \"2 3/8 in\"."));
        spec.addOption(Options.value("--angle", "ANGLE", String.class, "From hub position 1, like \"120 deg\"."));
        spec.addOption(Options.value("--off", "LABEL", String.class, "Take this weight off, by its label or id."));
        spec.addOption(Options.value(
                "--angles",
                "SENSE",
                String.class,
                "Say once which way angles on this hub are counted: " + String.join(" or ", HubCounting.words())
                        + "."));
        spec.addOption(Options.value("--label", "TEXT", String.class, "A short name for the weight."));
        JobWords.addTime(spec);
    }

    @Override
    public int run(ParseResult words, PrintWriter out) {
        long said =
                OF_A_WEIGHT.stream().filter(name -> Options.said(words, name)).count();
        if (said != 0 && said != OF_A_WEIGHT.size()) {
            throw wrong(words, "a weight needs --mass, --radius and --angle");
        }
        Optional<HubWeight> on = said == 0
                ? Optional.empty()
                : Optional.of(new HubWeight(
                        Options.text(words, "--mass").orElseThrow(),
                        Options.text(words, "--radius").orElseThrow(),
                        Options.text(words, "--angle").orElseThrow()));
        Optional<HubCounting> counted = Options.text(words, "--angles").map(word -> counting(words, word));
        Optional<String> off = Options.text(words, "--off");
        if (on.isEmpty() && off.isEmpty() && counted.isEmpty()) {
            throw wrong(words, "say what was put on (--mass, --radius, --angle) or taken off (--off)");
        }
        int status = JobWords.written(
                JobWords.folder(words),
                List.of(WriteEntry.weight(
                        JobWords.folder(words),
                        on,
                        off,
                        counted,
                        Options.text(words, "--label"),
                        JobWords.time(words))),
                out);
        Terminal.lines(Document.begin().handsOff().done()).forEach(out::println);
        return status;
    }

    private static HubCounting counting(ParseResult words, String word) {
        return Worded.named(HubCounting.class, word)
                .orElseThrow(() -> wrong(words, "--angles is " + String.join(" or ", HubCounting.words())));
    }

    private static ParameterException wrong(ParseResult words, String what) {
        return new ParameterException(words.commandSpec().commandLine(), what);
    }
}
