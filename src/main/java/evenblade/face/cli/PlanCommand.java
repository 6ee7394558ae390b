package evenblade.face.cli;

import evenblade.base.json.JsonWriter;
import evenblade.face.app.WriteReport;
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
                        "Say where each order will be, what coincides, what the sensor misses; print the run card.");
        spec.addOption(Options.installation());
        spec.addOption(Options.repeated(
                "--engine-rpm",
                "RPM",
                Double.class,
                "A speed to hold; may be repeated. Left out: five, from where a pull can be seen up to 90 %% of the"
                        + " highest."));
        spec.addOption(Options.value(
                "--sample-rate", "HZ", Double.class, "Samples per second of the sensor: shows what it can't see."));
        spec.addOption(Options.value(
                "--card",
                "FILE",
                Path.class,
                "Write the run card as a page to print (PDF), with blanks to fill in by hand."));
        spec.addOption(Options.value("--paper", "SIZE", String.class, "With --card: A4 or Letter; A4, if not given."));
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
        Options.path(words, "--card").ifPresent(card -> {
            WriteReport.runCard(plan, card, ReportCommand.paper(words));
            (Options.said(words, "--json") ? words.commandSpec().commandLine().getErr() : out).println("wrote " + card);
        });
        return ExitStatus.DONE;
    }
}
