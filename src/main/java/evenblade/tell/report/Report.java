package evenblade.tell.report;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;

/**
 * A report ready to be written: for a browser, and as sheets of paper. Both come from one template and
 * hold everything they show.
 */
public final class Report {
    private final ReportContent content;
    private final PaperSize paper;
    private final ReportExtent extent;

    public Report(ReportContent content, PaperSize paper, ReportExtent extent) {
        this.content = content;
        this.paper = paper;
        this.extent = extent;
    }

    /** One HTML file in UTF-8, well-formed as XML, with its pictures inside. */
    public void writeHtml(OutputStream out) throws IOException {
        out.write(ReportTemplate.of(extent).page(content, paper).getBytes(StandardCharsets.UTF_8));
    }

    /** A PDF file with page numbers, a running head and its fonts inside. */
    public void writePdf(OutputStream out) throws IOException {
        Sheets.write(
                ReportTemplate.of(extent).sheets(content, paper),
                content.heading().program(),
                out);
    }
}
