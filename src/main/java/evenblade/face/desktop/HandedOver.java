package evenblade.face.desktop;

import evenblade.face.app.Progress;
import evenblade.face.app.WriteReport;
import evenblade.tell.report.PaperSize;
import evenblade.tell.report.ReportExtent;
import evenblade.tell.report.SheetImages;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** What can be printed or written of a job, to be handed over. */
enum HandedOver {
    SHORT(
            "Report",
            "A page for the customer, then what a stranger needs to judge it, with the fingerprints of all raw files. It is"
                    + " written as a page for the browser, sheets to print, and tables."),
    FULL(
            "Report with everything",
            "Everything that the job holds, on as many sheets as it takes. It is written as a page for the browser, sheets"
                    + " to print, and tables."),
    FOR_MAKER(
            "Sheet for the propeller maker",
            "One sheet to go with the propeller back to its maker: blades and serial numbers, marks by layout, blade"
                    + " angles, run-out, what was tried and what it did, and what is asked.");

    private final String word;
    private final String explained;

    HandedOver(String word, String explained) {
        this.word = word;
        this.explained = explained;
    }

    String explained() {
        return explained;
    }

    static List<String> words() {
        return Arrays.stream(values()).map(each -> each.word).toList();
    }

    static HandedOver named(String word) {
        return Arrays.stream(values())
                .filter(each -> each.word.equals(word))
                .findFirst()
                .orElse(SHORT);
    }

    private ReportExtent extent() {
        return this == FULL ? ReportExtent.FULL : ReportExtent.SHORT;
    }

    /** The sheets as they would be written now. */
    SheetImages sheets(Path job, PaperSize paper, Optional<String> question, Progress progress) throws IOException {
        return this == FOR_MAKER
                ? WriteReport.previewForMaker(job, paper, question, progress)
                : WriteReport.preview(job, paper, extent(), progress);
    }

    /** Writes it into a folder; the page first, then the sheets. */
    WriteReport.Written write(Path job, Path out, PaperSize paper, Optional<String> question, Progress progress) {
        return this == FOR_MAKER
                ? WriteReport.forMaker(job, Optional.of(out), paper, Optional.empty(), question, progress)
                : WriteReport.write(job, Optional.of(out), paper, Optional.empty(), extent(), progress);
    }
}
