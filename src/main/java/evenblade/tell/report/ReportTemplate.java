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

    /** The style sheet knows so many steps. */
    private static final int TIGHTEST = 3;

    private final String file;

    ReportTemplate(String file) {
        this.file = file;
    }

    static ReportTemplate of(ReportExtent extent) {
        return extent == ReportExtent.FULL ? FULL : SHORT;
    }

    /** The page as XHTML that a browser reads as HTML, with everything in it. */
    String page(Object content, PaperSize paper) {
        return fill(content, paper, new Setting(false, 0, true, true));
    }

    /** As sheets, with page numbers: what is meant to be one sheet is set as tightly as it takes, and no tighter. */
    String sheets(Object content, PaperSize paper) {
        int tight = 0;
        while (tight < TIGHTEST && Sheets.count(fill(content, paper, Setting.firstSheet(tight))) > 1) {
            tight++;
        }
        boolean fits = tight < TIGHTEST || Sheets.count(fill(content, paper, Setting.firstSheet(tight))) == 1;
        return fill(content, paper, new Setting(true, tight, true, fits));
    }

    /**
     * How a page is set.
     *
     * @param paged on sheets
     * @param tight how tightly, from 0 to {@link #TIGHTEST}
     * @param rest with what comes after the first sheet
     * @param fits whether the first sheet holds what it is to hold
     */
    private record Setting(boolean paged, int tight, boolean rest, boolean fits) {
        static Setting firstSheet(int tight) {
            return new Setting(true, tight, false, false);
        }
    }

    private String fill(Object content, PaperSize paper, Setting set) {
        String styles = resource("report.css") + (set.paged() ? resource("paper.css") : "");
        Map<String, Object> setting = Map.of(
                "styles", styles,
                "pageSize", paper.pageSize(),
                "paged", set.paged(),
                "tight", "tight-" + set.tight(),
                "rest", set.rest(),
                "fits", set.fits());
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
