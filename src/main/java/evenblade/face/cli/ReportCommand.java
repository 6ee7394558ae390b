package evenblade.face.cli;

import evenblade.base.problem.BadInput;
import evenblade.base.units.LengthUnit;
import evenblade.face.app.WriteReport;
import evenblade.tell.report.PaperSize;
import evenblade.tell.report.ReportExtent;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code evenblade report}: the record to hand over. */
final class ReportCommand implements Command {
    private static final int SHOWN = 2; // the page and the sheets

    @Override
    public void describe(CommandSpec spec) {
        spec.usageMessage()
                .description(
                        "Write the report of a job: report.html and report.pdf, and its figures as CSV tables. Short: a first page"
                                + " for the customer, then what a stranger needs to judge it.");
        JobWords.addFolder(spec);
        spec.addOption(Options.value("--out", "DIR", Path.class, "Where to write; the job's folder, if not given."));
        spec.addOption(Options.value(
                "--units",
                "UNITS",
                String.class,
                "Which unit of length comes first, metric or inch; the one that the readings were entered in, if not"
                        + " given."));
        spec.addOption(Options.flag("--full", "Everything that the job holds, on as many pages as it takes."));
        spec.addOption(Options.flag(
                "--for-maker",
                "One sheet to go with the propeller back to its maker, in place of the report: blades and serial numbers,"
                        + " marks by layout, blade angles, run-out, what was tried and what it did."));
        spec.addOption(Options.value(
                "--ask",
                "TEXT",
                String.class,
                "With --for-maker: what is asked. Left out: a check against the maker's own limits."));
        spec.addOption(Options.value("--paper", "SIZE", String.class, "A4 or Letter; A4, if not given."));
    }

    @Override
    public int run(ParseResult words, PrintWriter printed) {
        PaperSize paper = paper(words);
        Optional<LengthUnit> units = Options.text(words, "--units").map(JobUnits::named);
        ReportExtent extent = Options.said(words, "--full") ? ReportExtent.FULL : ReportExtent.SHORT;
        WriteReport.Written written;
        Path job = JobWords.folder(words);
        Optional<Path> out = Options.path(words, "--out");
        try (WorkBar bar = new WorkBar()) {
            written = Options.said(words, "--for-maker")
                    ? WriteReport.forMaker(job, out, paper, units, Options.text(words, "--ask"), bar)
                    : WriteReport.write(job, out, paper, units, extent, bar);
        }
        List<Path> files = written.files();
        files.stream().limit(SHOWN).forEach(printed::println);
        if (files.size() > SHOWN) {
            printed.println(
                    (files.size() - SHOWN) + " tables in " + files.get(0).resolveSibling("tables"));
        }
        WarningText.marked(written.warnings()).forEach(printed::println);
        return ExitStatus.DONE;
    }

    static PaperSize paper(ParseResult words) {
        return Options.text(words, "--paper")
                .map(word -> PaperSize.named(word).orElseThrow(() -> BadInput.in("--paper")
                        .found("'" + word + "'", "one of " + String.join(", ", PaperSize.words()))))
                .orElse(PaperSize.A4);
    }
}
