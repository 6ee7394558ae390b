package evenblade.keep.job;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** What a photo or paper is, told by its first bytes and not by its name. */
public enum FileNature {
    JPEG("a JPEG picture", "image/jpeg", Set.of("jpg", "jpeg")),
    PNG("a PNG picture", "image/png", Set.of("png")),
    GIF("a GIF picture", "image/gif", Set.of("gif")),
    WEBP("a WebP picture", "image/webp", Set.of("webp")),
    TIFF("a TIFF picture", "image/tiff", Set.of("tif", "tiff")),
    BMP("a BMP picture", "image/bmp", Set.of("bmp")),
    HEIF("a HEIF picture", "image/heif", Set.of("heic", "heif", "avif")),
    PDF("a PDF paper", "application/pdf", Set.of("pdf")),
    ZIP("a ZIP archive or office paper", "application/zip", Set.of("zip", "docx", "xlsx", "odt", "ods", "odg")),
    VIDEO("an MP4 video", "video/mp4", Set.of("mp4", "m4v", "mov")),
    TEXT("plain text", "text/plain", Set.of("txt", "csv", "md", "json", "svg", "xml", "html")),
    UNKNOWN("a kind of file that isn't known here", "application/octet-stream", Set.of());

    /** How many bytes of a file {@link #of} wants to see. */
    public static final int BYTES_NEEDED = 512;

    private static final List<String> STILL_PICTURE_BRANDS =
            List.of("heic", "heix", "heim", "heis", "hevc", "mif1", "msf1", "avif");

    private final String display;
    private final String mediaType;
    private final Set<String> endings;

    FileNature(String display, String mediaType, Set<String> endings) {
        this.display = display;
        this.mediaType = mediaType;
        this.endings = endings;
    }

    /** As written for people. */
    public String display() {
        return display;
    }

    /** As written in the record. */
    public String mediaType() {
        return mediaType;
    }

    /** Whether a picture that a report can show. */
    public boolean showable() {
        return this == JPEG || this == PNG || this == GIF || this == BMP;
    }

    /** Whether it is a still picture. */
    public boolean picture() {
        return mediaType.startsWith("image/");
    }

    /** What a file's name promises; empty for an ending that isn't known here. */
    public static Optional<FileNature> promisedBy(String fileName) {
        int dot = fileName.lastIndexOf('.');
        String ending = dot < 0 ? "" : fileName.substring(dot + 1).toLowerCase(Locale.ROOT);
        return Arrays.stream(values()).filter(n -> n.endings.contains(ending)).findFirst();
    }

    static Optional<FileNature> ofMediaType(String mediaType) {
        return Arrays.stream(values())
                .filter(n -> n.mediaType.equals(mediaType))
                .findFirst();
    }

    /**
     * What a file is.
     *
     * <p>The marks are those of the formats' own public definitions, from memory.
     *
     * @param start its first bytes, at most {@link #BYTES_NEEDED} of them; all of a shorter file
     */
    public static FileNature of(byte[] start) {
        String latin = new String(start, StandardCharsets.ISO_8859_1);
        if (latin.startsWith("\u00ff\u00d8\u00ff")) {
            return JPEG;
        }
        if (latin.startsWith("\u0089PNG\r\n\u001a\n")) {
            return PNG;
        }
        if (latin.startsWith("GIF87a") || latin.startsWith("GIF89a")) {
            return GIF;
        }
        if (latin.startsWith("RIFF") && latin.startsWith("WEBP", 8)) {
            return WEBP;
        }
        if (latin.startsWith("II*\0") || latin.startsWith("MM\0*")) {
            return TIFF;
        }
        if (latin.startsWith("BM") && latin.length() > 26 && latin.startsWith("\0\0\0\0", 6)) {
            return BMP;
        }
        if (latin.startsWith("ftyp", 4) && latin.length() >= 12) {
            return STILL_PICTURE_BRANDS.contains(latin.substring(8, 12)) ? HEIF : VIDEO;
        }
        if (latin.startsWith("%PDF-")) {
            return PDF;
        }
        if (latin.startsWith("PK\u0003\u0004") || latin.startsWith("PK\u0005\u0006")) {
            return ZIP;
        }
        return looksLikeText(start) ? TEXT : UNKNOWN;
    }

    private static boolean looksLikeText(byte[] start) {
        for (byte b : start) {
            if (b >= 0 && b < 0x20 && b != '\t' && b != '\n' && b != '\r' && b != '\f') {
                return false;
            }
        }
        return start.length > 0;
    }
}
