package evenblade.face.cli;

import java.io.FilterWriter;
import java.io.IOException;
import java.io.Writer;
import java.util.Locale;

/**
 * Shows characters that steer a terminal instead of sending them: names, labels and texts may come from anybody. Such a
 * character is written as JSON writes it ({@code \u001b}), so JSON documents stay what they are. Line feeds and tabs
 * pass. A carriage return passes where it ends a line, or written by itself with {@link #write(int)}, as the program's
 * own lines are.
 */
final class VisibleWriter extends FilterWriter {
    VisibleWriter(Writer to) {
        super(to);
    }

    @Override
    public void write(int c) throws IOException {
        if (c == '\r') {
            out.write(c);
        } else {
            write(String.valueOf((char) c), 0, 1);
        }
    }

    @Override
    public void write(char[] text, int offset, int length) throws IOException {
        write(new String(text, offset, length), 0, length);
    }

    @Override
    public void write(String text, int offset, int length) throws IOException {
        String part = text.substring(offset, offset + length);
        out.write(part.codePoints().allMatch(VisibleWriter::plain) ? part : shown(part));
    }

    private static String shown(String text) {
        StringBuilder shown = new StringBuilder();
        for (int i = 0; i < text.length(); ) {
            int c = text.codePointAt(i);
            i += Character.charCount(c);
            boolean endsLine = c == '\r' && i < text.length() && text.charAt(i) == '\n';
            if (plain(c) || endsLine) {
                shown.appendCodePoint(c);
            } else {
                for (char half : Character.toChars(c)) {
                    shown.append(String.format(Locale.ROOT, "\\u%04x", (int) half));
                }
            }
        }
        return shown.toString();
    }

    /** Neither a control, nor one that turns the direction of writing or can't be seen, nor half a character. */
    private static boolean plain(int c) {
        if (c == '\n' || c == '\t') {
            return true;
        }
        return switch (Character.getType(c)) {
            case Character.CONTROL,
                    Character.FORMAT,
                    Character.SURROGATE,
                    Character.LINE_SEPARATOR,
                    Character.PARAGRAPH_SEPARATOR -> false;
            default -> true;
        };
    }
}
