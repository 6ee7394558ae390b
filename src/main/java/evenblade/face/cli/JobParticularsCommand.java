package evenblade.face.cli;

import evenblade.base.problem.BadInput;
import evenblade.face.app.JobParticulars;
import evenblade.keep.job.Particulars;
import evenblade.tell.report.UnitsOfJob;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.Map;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code evenblade job particulars}: whose machine it is, who works on it, and in which units. */
final class JobParticularsCommand implements Command {
    @Override
    public void describe(CommandSpec spec) {
        spec.usageMessage()
                .description(
                        "Whose machine it is and who works on it, for the first page of the report. All may be left out; an"
                                + " empty text takes one away. Without options: show them.");
        JobWords.addFolder(spec);
        for (Particulars.Item item : Particulars.Item.values()) {
            if (item != Particulars.Item.UNITS) {
                spec.addOption(Options.value("--" + item.word(), "TEXT", String.class, item.title() + "."));
            }
        }
        spec.addOption(JobUnits.option());
    }

    @Override
    public int run(ParseResult words, PrintWriter out) {
        Map<Particulars.Item, String> said = new EnumMap<>(Particulars.Item.class);
        for (Particulars.Item item : Particulars.Item.values()) {
            Options.text(words, "--" + item.word()).ifPresent(text -> said.put(item, text));
        }
        if (said.containsKey(Particulars.Item.UNITS)
                && UnitsOfJob.named(said.get(Particulars.Item.UNITS)).isEmpty()) {
            throw BadInput.in("--units")
                    .found(
                            "'" + said.get(Particulars.Item.UNITS) + "'",
                            "one of " + String.join(", ", UnitsOfJob.words()));
        }
        Path job = JobWords.folder(words);
        Particulars known = said.isEmpty() ? JobParticulars.read(job) : JobParticulars.change(job, said);
        known.items().forEach((item, text) -> out.println(item.title() + ": " + text));
        if (known.items().isEmpty()) {
            out.println("nothing said yet; see 'evenblade job particulars --help'");
        }
        return ExitStatus.DONE;
    }
}
