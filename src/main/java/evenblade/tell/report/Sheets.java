package evenblade.tell.report;

import com.openhtmltopdf.extend.FSTextBreaker;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PDFontSupplier;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.util.XRLog;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.text.BreakIterator;
import java.util.Locale;
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
        try (PDDocument sheets = new PDDocument()) {
            builder(xhtml, sheets).withProducer(producer).toStream(out).run();
        }
    }

    /** How many sheets a page takes. */
    static int count(String xhtml) {
        try (PDDocument sheets = new PDDocument();
                PdfBoxRenderer laidOut = builder(xhtml, sheets).buildPdfRenderer()) {
            laidOut.layout();
            return laidOut.getRootBox().getLayer().getPages().size();
        } catch (IOException e) {
            throw new UncheckedIOException(e); // nothing but memory is written to
        }
    }

    private static PdfRendererBuilder builder(String xhtml, PDDocument sheets) throws IOException {
        XRLog.setLoggingEnabled(false);
        PDType0Font regular = font(OwnFonts.REGULAR, sheets);
        PDType0Font bold = font(OwnFonts.BOLD, sheets);
        return new PdfRendererBuilder()
                .usePDDocument(sheets)
                .useFont(new PDFontSupplier(regular), FONT, REGULAR, FontStyle.NORMAL, true)
                .useFont(new PDFontSupplier(bold), FONT, BOLD, FontStyle.NORMAL, true)
                .useUnicodeLineBreaker(new LineEnds())
                .useUriResolver((base, uri) -> uri.startsWith("data:") ? uri : null)
                .withHtmlContent(xhtml, null);
    }

    /** Where a line may end by the rules of the language; the renderer's own rule parts "m/s²" as it would an address. */
    private static final class LineEnds implements FSTextBreaker {
        private final BreakIterator lines = BreakIterator.getLineInstance(Locale.ENGLISH);

        @Override
        public int next() {
            return lines.next();
        }

        @Override
        public void setText(String text) {
            lines.setText(text);
        }
    }

    /** Without joined letters: what is read as one sign is not found by a search for two. */
    private static PDType0Font font(String name, PDDocument sheets) throws IOException {
        TrueTypeFont font = OwnFonts.read(name);
        font.setEnableGsub(false);
        return PDType0Font.load(sheets, font, true);
    }
}
