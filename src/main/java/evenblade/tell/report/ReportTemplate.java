package evenblade.tell.report;

import com.samskivert.mustache.Mustache;
import evenblade.tell.document.Html;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;

/** Sets what a paper says as a page; the only class that knows the template engine. */
enum ReportTemplate {
    FULL("report.html"),
    SHORT("short.html"),
    SHEET("sheet.html");

    private final String file;

    ReportTemplate(String file) {
        this.file = file;
    }

    static ReportTemplate of(ReportExtent extent) {
        return extent == ReportExtent.FULL ? FULL : SHORT;
    }

    /** The page as XHTML that a browser reads as HTML, with everything in it. */
    String page(Object content, PaperSize paper) {
        return fill(content, paper, false);
    }

    /** As sheets, with page numbers. */
    String sheets(Object content, PaperSize paper) {
        return fill(content, paper, true);
    }

    private String fill(Object content, PaperSize paper, boolean paged) {
        String styles = resource("report.css") + (paged ? resource("paper.css") : "");
        Map<String, Object> setting = Map.of("styles", styles, "pageSize", paper.pageSize(), "paged", paged);
        StringWriter page = new StringWriter();
        Mustache.compiler().withEscaper(Html::escaped).compile(resource(file)).execute(content, setting, page);
        return page.toString();
    }

    private static String resource(String name) {
        try (InputStream in = ReportTemplate.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
