package evenblade.tell.report;

import com.samskivert.mustache.Mustache;
import com.samskivert.mustache.Template;
import evenblade.tell.document.Html;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;

/** Sets a report's content as a page; the only class that knows the template engine. */
final class ReportTemplate {
    private ReportTemplate() {}

    /** The page as XHTML that a browser reads as HTML, with everything in it. */
    static String page(ReportContent content, PaperSize paper, ReportExtent extent) {
        return fill(content, paper, extent, false);
    }

    /** With a running head and page numbers, for sheets. */
    static String sheets(ReportContent content, PaperSize paper, ReportExtent extent) {
        return fill(content, paper, extent, true);
    }

    private static String fill(ReportContent content, PaperSize paper, ReportExtent extent, boolean paged) {
        String styles = resource("report.css") + (paged ? resource("paper.css") : "");
        Map<String, Object> setting = Map.of("styles", styles, "pageSize", paper.pageSize(), "paged", paged);
        StringWriter page = new StringWriter();
        template(extent).execute(content, setting, page);
        return page.toString();
    }

    private static Template template(ReportExtent extent) {
        return Mustache.compiler()
                .withEscaper(Html::escaped)
                .compile(resource(extent == ReportExtent.FULL ? "report.html" : "short.html"));
    }

    private static String resource(String name) {
        try (InputStream in = ReportTemplate.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
