package evenblade.tell.report;

import evenblade.tell.chart.ChartTheme;
import evenblade.tell.chart.Picture;
import evenblade.tell.document.Html;
import java.util.Base64;
import java.util.Optional;

/**
 * A picture inside a report.
 *
 * @param words what it shows, for those who can't see it
 * @param mediaType of both
 * @param broad as a page shows it
 * @param narrow the same drawn anew for a telephone, where it was
 * @param wide whether it is as wide as the page; of others two stand side by side where there is room
 */
public record ReportFigure(String words, String mediaType, Bytes broad, Optional<Bytes> narrow, boolean wide) {
    private static final String PNG = "image/png";
    /** Twice the points of a telephone that is 390 wide, less its margins: sharp on any. */
    private static final int NARROW_PX = 724;
    /** A picture is at least so many lines of text high; more where the broad one is. */
    private static final int LEAST_TEXTS = 20;

    /** The bytes of a file, which nobody changes. */
    public static final class Bytes {
        private final String base64;

        private Bytes(String base64) {
            this.base64 = base64;
        }

        public static Bytes of(byte[] bytes) {
            return new Bytes(Base64.getEncoder().encodeToString(bytes));
        }

        /** As they were given. */
        public byte[] get() {
            return Base64.getDecoder().decode(base64);
        }
    }

    /** A picture as wide as the page, and drawn anew for a telephone. */
    public static ReportFigure drawn(Picture picture, int width, int height) {
        return drawn(picture, width, height, ChartTheme.forPage(width, height));
    }

    /** With text of a stated size. */
    static ReportFigure drawn(Picture picture, int width, int height, ChartTheme theme) {
        ChartTheme phone = ChartTheme.forPhone(NARROW_PX);
        int tall = (int) Math.round(phone.textPx() * Math.max(LEAST_TEXTS, height / theme.textPx()));
        return new ReportFigure(
                picture.title(),
                PNG,
                Bytes.of(picture.png(width, height, theme)),
                Optional.of(Bytes.of(picture.png(NARROW_PX, tall, phone))),
                true);
    }

    /** A picture as wide as the page in one size alone. */
    public static ReportFigure wide(String words, byte[] png) {
        return kept(words, png, Optional.empty());
    }

    /** A picture as wide as the page that was drawn earlier. */
    public static ReportFigure kept(String words, byte[] png, Optional<byte[]> narrow) {
        return new ReportFigure(words, PNG, Bytes.of(png), narrow.map(Bytes::of), true);
    }

    /** A photo as the bytes of a JPEG file. */
    public static ReportFigure photo(String words, byte[] jpeg) {
        return new ReportFigure(words, "image/jpeg", Bytes.of(jpeg), Optional.empty(), false);
    }

    /** As elements of a page, which needs no other file; a style sheet shows one of the two sizes. */
    public String html() {
        return image(broad, narrow.isPresent() ? " class=\"broad\"" : "")
                + narrow.map(bytes -> image(bytes, " class=\"narrow\"")).orElse("");
    }

    private String image(Bytes bytes, String style) {
        return "<img" + style + " src=\"data:" + mediaType + ";base64," + bytes.base64 + "\" alt=\""
                + Html.escaped(words) + "\"/>";
    }
}
