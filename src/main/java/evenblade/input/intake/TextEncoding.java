package evenblade.input.intake;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/**
 * The character encoding of a text file.
 *
 * @param charset to decode with
 * @param markBytes length of the byte order mark to skip
 */
record TextEncoding(Charset charset, int markBytes) {
    /**
     * Judges the start of a file: byte order mark, else UTF-16 by its zero bytes, else UTF-8 where it is
     * valid, else Latin-1, in which any byte means something.
     */
    static TextEncoding of(byte[] head) {
        if (at(head, 0) == 0xef && at(head, 1) == 0xbb && at(head, 2) == 0xbf) {
            return new TextEncoding(StandardCharsets.UTF_8, 3);
        }
        if (at(head, 0) == 0xff && at(head, 1) == 0xfe) {
            return new TextEncoding(StandardCharsets.UTF_16LE, 2);
        }
        if (at(head, 0) == 0xfe && at(head, 1) == 0xff) {
            return new TextEncoding(StandardCharsets.UTF_16BE, 2);
        }
        if (mostlyZero(head, 1) && !mostlyZero(head, 0)) {
            return new TextEncoding(StandardCharsets.UTF_16LE, 0);
        }
        if (mostlyZero(head, 0) && !mostlyZero(head, 1)) {
            return new TextEncoding(StandardCharsets.UTF_16BE, 0);
        }
        return new TextEncoding(validUtf8(head) ? StandardCharsets.UTF_8 : StandardCharsets.ISO_8859_1, 0);
    }

    /** Whether the bytes are text in two-byte units. */
    static boolean wide(byte[] head) {
        Charset charset = of(head).charset();
        return charset == StandardCharsets.UTF_16LE || charset == StandardCharsets.UTF_16BE;
    }

    private static int at(byte[] head, int index) {
        return index < head.length ? head[index] & 0xff : -1;
    }

    private static boolean mostlyZero(byte[] head, int parity) {
        int zeros = 0;
        int seen = 0;
        for (int i = parity; i < head.length; i += 2) {
            seen++;
            if (head[i] == 0) {
                zeros++;
            }
        }
        return seen >= 2 && zeros > 0.8 * seen;
    }

    /** Whether it is valid, or has more lines of valid characters beyond ASCII than of broken ones. */
    private static boolean validUtf8(byte[] head) {
        int valid = 0;
        int broken = 0;
        for (int from = 0, to; from < head.length; from = to + 1) {
            to = from;
            while (to < head.length && head[to] != '\n') {
                to++;
            }
            // A character may be cut at the end of what was read.
            if (to == head.length && from > 0) {
                break;
            }
            ByteBuffer line = ByteBuffer.wrap(head, from, to - from);
            try {
                int letters = StandardCharsets.UTF_8.newDecoder().decode(line).length();
                valid += letters < to - from ? 1 : 0;
            } catch (CharacterCodingException e) {
                broken++;
            }
        }
        return broken == 0 || valid > 0;
    }
}
