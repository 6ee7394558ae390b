package evenblade.input.intake;

import java.io.IOException;
import java.io.Reader;
import java.util.Optional;

/**
 * The lines of a text that may hold anything: zero bytes are dropped, and a line without end is cut, so that no
 * garbage costs more memory than a line may have. Not for use by several threads.
 */
final class LineSource {
    /** Far beyond any row of a table; what comes after it is no row. */
    static final int LONGEST = 1 << 16;

    private final Reader text;
    private final char[] buffer = new char[1 << 14];
    private int at;
    private int end;
    private long number;
    private boolean afterReturn;

    /** @param text read to its end and left open */
    LineSource(Reader text) {
        this.text = text;
    }

    /** Number of the line given last, counted from 1. */
    long number() {
        return number;
    }

    /** The next line without its end; empty after the last. */
    Optional<String> next() throws IOException {
        StringBuilder line = new StringBuilder();
        boolean any = false;
        while (true) {
            if (at == end) {
                at = 0;
                end = Math.max(0, text.read(buffer));
                if (end == 0) {
                    number++;
                    return any ? Optional.of(line.toString()) : Optional.empty();
                }
            }
            char c = buffer[at++];
            if (c == '\n' && afterReturn) {
                afterReturn = false;
                continue;
            }
            afterReturn = c == '\r';
            if (c == '\n' || c == '\r') {
                number++;
                return Optional.of(line.toString());
            }
            any = true;
            if (c != 0 && line.length() < LONGEST) {
                line.append(c);
            }
        }
    }
}
