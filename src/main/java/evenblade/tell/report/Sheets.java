package evenblade.tell.report;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PDFontSupplier;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.util.XRLog;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** Lays a page out on sheets of paper as PDF. */
final class Sheets {
    private static final String FONT = "Report Sans";
    private static final int REGULAR = 400; // CSS weight of the font
    private static final int BOLD = 700; // CSS weight of the font

    /** Held, or it would be forgotten: it tells of fonts of the system, of which none is used. */
    private static final Logger LIBRARY_LOG = Logger.getLogger("org.apache.pdfbox");

    private Sheets() {}

    /**
     * Writes a PDF file.
     *
     * @param xhtml well-formed, with everything in it: nothing is fetched
     * @param producer named in the file
     */
    static void write(String xhtml, String producer, OutputStream out) throws IOException {
        XRLog.setLoggingEnabled(false);
        LIBRARY_LOG.setLevel(Level.OFF);
        try (PDDocument sheets = new PDDocument()) {
            PDType0Font regular = font("DejaVuSansCondensed.ttf", sheets);
            PDType0Font bold = font("DejaVuSansCondensed-Bold.ttf", sheets);
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
        try (InputStream in = Sheets.class.getResourceAsStream(name)) {
            TrueTypeFont font = new TTFParser().parse(new RandomAccessReadBuffer(in));
            font.setEnableGsub(false);
            return PDType0Font.load(sheets, font, true);
        }
    }
}
