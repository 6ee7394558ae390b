package evenblade.input.intake;

import java.nio.charset.StandardCharsets;

/** Kinds of file, told by their first bytes and never by the name. */
enum FileKind {
    WAV("a WAV file"),
    AIFF("an AIFF file"),
    AU("an AU file"),
    FLAC("a FLAC file"),
    TEXT("text"),
    OTHER("a file of unknown kind");

    /** The kinds that can be read, for a refusal. */
    static final String READABLE = "a WAV, AIFF, AU or FLAC sound file or a CSV table";

    /** Of random bytes one in nine is a control character, of text none; a few rows may be noise. */
    private static final double MOST_CONTROLS = 0.01;

    private static final int LEAST_LINES = 8;

    /** A kind and how to speak of what was found. */
    record Found(FileKind kind, String description) {}

    private record Signature(int offset, String bytes, String description) {
        boolean matches(byte[] head) {
            return startsWith(head, offset, bytes);
        }
    }

    /** Kinds that are often met and can't be read; bytes in Latin-1. */
    private static final Signature[] FOREIGN = {
        new Signature(0, "ID3", "an MP3 file (lossy)"),
        new Signature(0, "OggS", "an Ogg file (usually lossy)"),
        new Signature(4, "ftyp", "an MP4 or M4A file (usually lossy)"),
        new Signature(0, "RIFX", "a big-endian RIFX file"),
        new Signature(0, "riff", "a Wave64 file"),
        new Signature(0, "caff", "a CAF file"),
        new Signature(0, "wvpk", "a WavPack file"),
        new Signature(0, "MAC ", "a Monkey's Audio file"),
        new Signature(0, "\u001a\u0045\u00df\u00a3", "a Matroska or WebM file"),
        new Signature(0, "PK\u0003\u0004", "a ZIP archive or a spreadsheet"),
        new Signature(0, "\u001f\u008b", "a gzip archive"),
        new Signature(0, "\u00d0\u00cf\u0011\u00e0", "an old spreadsheet or document"),
        new Signature(0, "%PDF", "a PDF document"),
        new Signature(0, "\u0089PNG", "a PNG picture"),
        new Signature(0, "\u00ff\u00d8\u00ff", "a JPEG picture"),
    };

    private final String words;

    FileKind(String words) {
        this.words = words;
    }

    /** Judges the first bytes of a file, of which there must be at least one. */
    static Found of(byte[] head) {
        if (startsWith(head, 0, "RIFF") || startsWith(head, 0, "RF64") || startsWith(head, 0, "BW64")) {
            return startsWith(head, 8, "WAVE") || head.length < 12
                    ? found(WAV)
                    : new Found(OTHER, "a RIFF file of type \"" + latin(head, 8, 4) + "\"");
        }
        if (startsWith(head, 0, "FORM")) {
            return startsWith(head, 8, "AIFF") || startsWith(head, 8, "AIFC")
                    ? found(AIFF)
                    : new Found(OTHER, "an IFF file of type \"" + latin(head, 8, 4) + "\"");
        }
        if (startsWith(head, 0, ".snd")) {
            return found(AU);
        }
        if (startsWith(head, 0, "fLaC")) {
            return found(FLAC);
        }
        for (Signature signature : FOREIGN) {
            if (signature.matches(head)) {
                return new Found(OTHER, signature.description());
            }
        }
        if (looksLikeText(head)) {
            return found(TEXT);
        }
        if (head.length > 1 && (head[0] & 0xff) == 0xff && (head[1] & 0xe0) == 0xe0) {
            return new Found(OTHER, "an MP3 or AAC stream (lossy)");
        }
        return new Found(OTHER, describeBytes(head));
    }

    private static Found found(FileKind kind) {
        return new Found(kind, kind.words);
    }

    private static boolean looksLikeText(byte[] head) {
        if (TextEncoding.wide(head)) {
            return true;
        }
        // Noise at the start, or a few rows of it, don't make another kind of a table: its later half must be text.
        return controlShare(head, 0) == 0
                || controlShare(head, head.length / 2) <= MOST_CONTROLS && lines(head, head.length / 2) >= LEAST_LINES;
    }

    /** Share of control characters among bytes that aren't zero; 1 where all are zero. */
    private static double controlShare(byte[] head, int from) {
        int controls = 0;
        int seen = 0;
        for (int i = from; i < head.length; i++) {
            byte b = head[i];
            seen += b == 0 ? 0 : 1;
            controls += b > 0 && b < 32 && b != '\t' && b != '\n' && b != '\r' && b != '\f' ? 1 : 0;
        }
        return seen == 0 ? 1 : (double) controls / seen;
    }

    private static int lines(byte[] head, int from) {
        int lines = 0;
        for (int i = from; i < head.length; i++) {
            lines += head[i] == '\n' || head[i] == '\r' ? 1 : 0;
        }
        return lines;
    }

    private static String describeBytes(byte[] head) {
        boolean zeros = true;
        StringBuilder hex = new StringBuilder();
        for (int i = 0; i < head.length; i++) {
            zeros &= head[i] == 0;
            if (i < 8) {
                hex.append(i == 0 ? "" : " ").append(String.format(java.util.Locale.ROOT, "%02x", head[i]));
            }
        }
        return zeros ? "nothing but zero bytes at its start" : "a file of unknown kind that starts with bytes " + hex;
    }

    private static boolean startsWith(byte[] head, int offset, String bytes) {
        return head.length >= offset + bytes.length()
                && latin(head, offset, bytes.length()).equals(bytes);
    }

    private static String latin(byte[] head, int offset, int length) {
        int end = Math.min(head.length, offset + length);
        return offset >= end ? "" : new String(head, offset, end - offset, StandardCharsets.ISO_8859_1);
    }
}
