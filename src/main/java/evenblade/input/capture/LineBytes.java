package evenblade.input.capture;

import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import java.util.Optional;

/**
 * Parts a stream of bytes into lines without changing one of them. A line ends behind a line feed, or behind a carriage
 * return that no line feed follows within the bytes at hand; a line without end is cut at {@value #LONGEST} bytes.
 */
final class LineBytes {
    /** Far beyond any row of a sensor. */
    static final int LONGEST = 1 << 16;

    private final InputStream input;
    private final byte[] chunk = new byte[1 << 13];
    private int at;
    private int end;
    private boolean closed;
    private Optional<IOException> trouble = Optional.empty();

    LineBytes(InputStream input) {
        this.input = input;
    }

    /**
     * A line as it came.
     *
     * @param bytes all of them, its end included
     * @param cut whether it is only the first part of a line that was too long
     */
    record Line(byte[] bytes, boolean cut) {}

    /**
     * The next line, or what is left behind the last line end; empty at the end of the stream.
     *
     * @throws IOException where the stream broke, once all that had come in was given
     */
    Optional<Line> next() throws IOException {
        byte[] line = new byte[256];
        int length = 0;
        while (length < LONGEST) {
            if (at == end && !fill()) {
                if (length == 0 && trouble.isPresent()) {
                    throw trouble.get();
                }
                return length == 0 ? Optional.empty() : Optional.of(new Line(Arrays.copyOf(line, length), false));
            }
            byte b = chunk[at++];
            line = length == line.length ? Arrays.copyOf(line, 4 * length) : line;
            line[length++] = b;
            boolean lone = b == '\r' && at < end && chunk[at] != '\n';
            if (b == '\n' || lone) {
                return Optional.of(new Line(Arrays.copyOf(line, length), false));
            }
        }
        return Optional.of(new Line(Arrays.copyOf(line, length), true));
    }

    private boolean fill() {
        if (closed) {
            return false;
        }
        at = 0;
        end = 0;
        try {
            end = Math.max(0, input.read(chunk));
        } catch (IOException e) {
            trouble = Optional.of(e);
        }
        closed = end == 0;
        return !closed;
    }
}
