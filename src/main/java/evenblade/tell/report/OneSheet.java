package evenblade.tell.report;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * A paper of its own beside the report, meant to fit on one sheet: for a browser and for a printer, from one template.
 *
 * @param kind what sort of paper it is
 * @param title what it is about
 * @param invented whether nothing on it was measured
 * @param foot at the end of each sheet
 * @param parts from top to bottom
 */
public record OneSheet(String kind, String title, boolean invented, String foot, List<Section> parts) {
    public OneSheet {
        parts = List.copyOf(parts);
    }

    /** One HTML file in UTF-8 with its pictures inside. */
    public void writeHtml(OutputStream out) throws IOException {
        out.write(ReportTemplate.SHEET.page(this, PaperSize.A4).getBytes(StandardCharsets.UTF_8));
    }

    /** A PDF file with its fonts inside. */
    public void writePdf(PaperSize paper, OutputStream out) throws IOException {
        Sheets.write(ReportTemplate.SHEET.sheets(this, paper), "Evenblade", out);
    }
}
