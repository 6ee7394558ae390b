package evenblade.tell.report;

import evenblade.tell.report.ReportContent.Heading;
import java.util.ArrayList;
import java.util.List;

/** Puts the parts of a report together. */
final class Composition {
    private Composition() {}

    static ReportContent of(ReportInput input) {
        Lengths lengths = new Lengths(input.units());
        return new ReportContent(
                new Heading(
                        input.record().name(),
                        input.record().installation().name().orElse(""),
                        input.record().invented(),
                        Amounts.minute(input.made()),
                        "Evenblade " + input.version()),
                ExecutiveSummary.of(input),
                input.findings(),
                Timeline.of(input.record()),
                input.comparisons().stream().map(ComparisonParts::of).toList(),
                input.trend(),
                input.turn(),
                StaticParts.of(input.record(), lengths),
                input.answers(),
                runs(input.runs()),
                input.photos(),
                PhotoNotes.of(input.record(), input.photos()),
                InstallationFacts.of(input.record().installation(), lengths),
                InstallationFacts.limits(input.record().installation(), lengths),
                EvidenceRows.of(input.record(), input.fileWarnings()));
    }

    private static List<RunPart> runs(List<ReportedRun> runs) {
        List<RunPart> parts = new ArrayList<>();
        for (int i = runs.size() - 1; i >= 0; i--) {
            RunPart part = runs.get(i).part();
            parts.add(i == runs.size() - 1 ? part : part.mainDwellOnly());
        }
        return parts;
    }
}
