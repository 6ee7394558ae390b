package evenblade.tell.report;

import java.util.Base64;

/** A picture inside a report. */
public final class ReportFigure {
    private final String words;
    private final String mediaType;
    private final String base64;
    private final boolean wide;

    private ReportFigure(String words, String mediaType, byte[] bytes, boolean wide) {
        this.words = words;
        this.mediaType = mediaType;
        this.base64 = Base64.getEncoder().encodeToString(bytes);
        this.wide = wide;
    }

    /**
     * A picture as wide as the page.
     *
     * @param words what it shows, for those who can't see it
     * @param png the bytes of a PNG file
     */
    public static ReportFigure wide(String words, byte[] png) {
        return new ReportFigure(words, "image/png", png, true);
    }

    /** A picture of which two stand side by side where there is room. */
    public static ReportFigure half(String words, byte[] png) {
        return new ReportFigure(words, "image/png", png, false);
    }

    /** A photo as the bytes of a JPEG file. */
    public static ReportFigure photo(String words, byte[] jpeg) {
        return new ReportFigure(words, "image/jpeg", jpeg, false);
    }

    /** What it shows. */
    public String words() {
        return words;
    }

    /** The picture as it was given. */
    public byte[] bytes() {
        return Base64.getDecoder().decode(base64);
    }

    /** Whether it is as wide as the page. */
    public boolean wide() {
        return wide;
    }

    /** The picture itself as an address, so that a page needs no other file. */
    public String address() {
        return "data:" + mediaType + ";base64," + base64;
    }
}
