package evenblade.face.cli;

import evenblade.base.problem.BadInput;
import evenblade.base.units.LengthUnit;
import evenblade.face.app.JobParticulars;
import evenblade.tell.document.Face;
import evenblade.tell.document.FigureFormat;
import evenblade.tell.document.Phrases;
import evenblade.tell.report.UnitsOfJob;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/** Which unit of length comes first in an answer about a job. */
final class JobUnits {
    private JobUnits() {}

    static OptionSpec option() {
        return Options.value(
                "--units",
                "UNITS",
                String.class,
                "Which unit of length comes first, metric or inch; the job keeps it. Left out: the one that it keeps, else"
                        + " that of its readings.");
    }

    /** The unit that was asked for; empty where none was. */
    static Optional<LengthUnit> wanted(ParseResult words) {
        return Options.text(words, "--units").map(JobUnits::named);
    }

    /** Phrases that give lengths in the units of a job. */
    static Phrases phrases(Path job, ParseResult words) {
        return new Phrases(Face.COMMAND_LINE, new FigureFormat(JobParticulars.units(job, wanted(words))));
    }

    /** The units that a word after --units names. */
    static LengthUnit named(String word) {
        return UnitsOfJob.named(word).orElseThrow(() -> BadInput.in("--units")
                .found("'" + word + "'", "one of " + String.join(", ", UnitsOfJob.words())));
    }
}
