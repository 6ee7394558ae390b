package evenblade.tell.report;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PDFontSupplier;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.util.XRLog;
import java.io.IOException;
import java.io.OutputStream;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.FontMappers;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** Lays a page out on sheets of paper as PDF. */
final class Sheets {
    private static final String FONT = "Report Sans";
    private static final int REGULAR = 400; // CSS weight of the font
    private static final int BOLD = 700; // CSS weight of the font

    static {
        FontMappers.set(new OwnFonts());
    }

    private Sheets() {}

    /**
     * Writes a PDF file.
     *
     * @param xhtml well-formed, with everything in it: nothing is fetched
     * @param producer named in the file
     */
    static void write(String xhtml, String producer, OutputStream out) throws IOException {
        XRLog.setLoggingEnabled(false);
        try (PDDocument sheets = new PDDocument()) {
            PDType0Font regular = font(OwnFonts.REGULAR, sheets);
            PDType0Font bold = font(OwnFonts.BOLD, sheets);
            new PdfRendererBuilder()
                    .usePDDocument(sheets)
                    .useFont(new PDFontSupplier(regular), FONT, REGULAR, FontStyle.NORMAL, true)
                    .useFont(new PDFontSupplier(bold), FONT, BOLD, FontStyle.NORMAL, true)
                    .useUriResolver((base, uri) -> uri.startsWith("data:") ? uri : null)
                    .withProducer(producer)
                    .withHtmlContent(xhtml, null)
                    .toStream(out)
                    .run();
        }
    }

    /** Without joined letters: what is read as one sign is not found by a search for two. */
    private static PDType0Font font(String name, PDDocument sheets) throws IOException {
        TrueTypeFont font = OwnFonts.read(name);
        font.setEnableGsub(false);
        return PDType0Font.load(sheets, font, true);
    }
}
