package evenblade.report;

import com.openhtmltopdf.extend.FSSupplier;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.util.XRLog;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;

/** Lays a page out on sheets of paper as PDF; the only class that knows the PDF library. */
final class Sheets {
    private static final String FONT = "Report Sans";
    private static final int REGULAR = 400;
    private static final int BOLD = 700;

    private Sheets() {}

    /**
     * Writes a PDF file.
     *
     * @param xhtml well-formed, with everything in it: nothing is fetched
     * @param producer named in the file
     */
    static void write(String xhtml, String producer, OutputStream out) throws IOException {
        XRLog.setLoggingEnabled(false);
        new PdfRendererBuilder()
                .useFastMode()
                .useFont(font("DejaVuSansCondensed.ttf"), FONT, REGULAR, FontStyle.NORMAL, true)
                .useFont(font("DejaVuSansCondensed-Bold.ttf"), FONT, BOLD, FontStyle.NORMAL, true)
                .useUriResolver((base, uri) -> uri.startsWith("data:") ? uri : null)
                .withProducer(producer)
                .withHtmlContent(xhtml, null)
                .toStream(out)
                .run();
    }

    private static FSSupplier<InputStream> font(String name) {
        return () -> Sheets.class.getResourceAsStream(name);
    }
}
