package evenblade.face.cli;

import evenblade.base.json.JsonWriter;
import evenblade.machine.installation.InstallationFile;
import evenblade.machine.plan.Planner;
import evenblade.machine.plan.RunPlan;
import evenblade.tell.document.PlanDocument;
import java.io.PrintWriter;
import java.nio.file.Path;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code evenblade plan}: what a ground run will show, before it is made. */
final class PlanCommand implements Command {
    @Override
    public void describe(CommandSpec spec) {
        spec.usageMessage()
                .description(
                        "Tell where each order will lie, what coincides, what the sensor misses; print the run card.");
        spec.addOption(Options.installation());
        spec.addOption(Options.repeated(
                "--engine-rpm",
                "RPM",
                Double.class,
                "A speed to hold; may be repeated. Left out: five from idle upwards."));
        spec.addOption(Options.value(
                "--sample-rate", "HZ", Double.class, "Samples per second of the sensor: shows what it can't see."));
        spec.addOption(Options.json());
    }

    @Override
    public int run(ParseResult words, PrintWriter out) {
        Path installation = Options.path(words, "--installation").orElseThrow();
        RunPlan plan = Planner.plan(
                InstallationFile.read(installation),
                Options.all(words, "--engine-rpm"),
                Options.number(words, "--sample-rate"));
        if (Options.said(words, "--json")) {
            out.print(JsonWriter.write(PlanJson.of(plan)));
        } else {
            Terminal.lines(PlanDocument.of(plan, WarningText.PHRASES)).forEach(out::println);
        }
        return ExitStatus.DONE;
    }
}
