package evenblade.tell.report;

import evenblade.judge.findings.Finding;
import evenblade.tell.document.Face;
import evenblade.tell.document.FigureFormat;
import evenblade.tell.document.FindingsDocument;
import evenblade.tell.document.InstallationDocument;
import evenblade.tell.document.Phrases;
import evenblade.tell.report.ReportContent.Heading;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Puts the parts of a report together. */
final class Composition {
    private Composition() {}

    static ReportContent of(ReportInput input) {
        Phrases phrases = new Phrases(Face.PAPER, new FigureFormat(input.units()));
        return new ReportContent(
                new Heading(
                        input.record().name(),
                        input.record().installation().name().orElse(""),
                        input.record().invented(),
                        FigureFormat.minute(input.made()),
                        "Evenblade " + input.version()),
                ExecutiveSummary.of(input),
                findings(input.firstPage().findings(), phrases),
                Timeline.of(input.record()),
                input.comparisons().stream().map(each -> each.section(phrases)).toList(),
                input.trend(),
                input.turn(),
                input.checks(),
                input.answers(),
                RunSections.of(input.runs(), phrases),
                input.photos(),
                PhotoNotes.of(input.record(), input.photos()),
                new Section(InstallationDocument.of(input.record().installation(), phrases), Map.of()),
                new Section(InstallationDocument.limits(input.record().installation(), phrases), Map.of()),
                EvidenceRows.of(input.record(), input.fileWarnings()),
                new ShortReport(FirstPageComposition.of(input), StrangersPart.of(input)));
    }

    private static List<Section> findings(List<Finding> findings, Phrases phrases) {
        return findings.isEmpty()
                ? List.of()
                : List.of(new Section(FindingsDocument.of(findings, Optional.empty(), List.of(), phrases), Map.of()));
    }
}
