package evenblade.input.intake;

import evenblade.base.problem.BadInput;
import evenblade.base.problem.PlainFile;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/** The door of this room: opens a recording of any readable kind, judged by its content. */
public final class RecordingReader {
    /** Enough to judge the kind of a file, and the shape of a table, by. */
    static final int HEAD_BYTES = 1 << 16;

    /** Longer than any stretch that a cable or a file system leaves blank. */
    private static final int MOST_ZEROS = 1 << 24;

    private static final List<String> SOUND_ENDINGS = List.of(
            ".wav", ".wave", ".aif", ".aiff", ".aifc", ".au", ".snd", ".flac", ".mp3", ".m4a", ".mp4", ".mov", ".ogg",
            ".opus");

    private RecordingReader() {}

    /**
     * Opens a file. Of sound only the header is read; a table is read whole.
     *
     * @throws BadInput where the file is missing, empty, a folder, of a kind that can't be read, damaged
     *     beyond use, shorter than a second, or without any change in it
     */
    public static Intake open(Path file, IntakeOptions options) {
        PlainFile.require(file, FileKind.READABLE);
        try {
            byte[] head;
            try (InputStream in = Files.newInputStream(file)) {
                head = in.readNBytes(HEAD_BYTES);
            }
            if (head.length == 0) {
                throw BadInput.in(file).found("an empty file", FileKind.READABLE);
            }
            byte[] start = startsWithZeros(head) ? behindZeros(file) : head;
            if (start.length > 0 && FileKind.of(start).kind() == FileKind.TEXT) {
                return text(file, start, options);
            }
            FileKind.Found found = FileKind.of(head);
            return switch (found.kind()) {
                case WAV, AIFF, AU, FLAC, MP3, MP4, OGG -> sound(file, found.kind(), options);
                case TEXT -> text(file, head, options);
                case OTHER -> throw BadInput.in(file).found(found.description(), FileKind.READABLE);
            };
        } catch (IOException e) {
            throw Unreadable.because(file, e);
        }
    }

    /** As a cable or a file system leaves them; two-byte text has no four in a row. */
    private static boolean startsWithZeros(byte[] head) {
        int zeros = 0;
        while (zeros < head.length && head[zeros] == 0) {
            zeros++;
        }
        return zeros == 1 && head.length > 2 && head[2] != 0 || zeros >= 3;
    }

    /** The first bytes behind the zeros that a file starts with. */
    private static byte[] behindZeros(Path file) throws IOException {
        try (BufferedInputStream in = new BufferedInputStream(Files.newInputStream(file))) {
            int first = 0;
            for (int i = 0; i < MOST_ZEROS && first == 0; i++) {
                first = in.read();
            }
            if (first <= 0) {
                return new byte[0];
            }
            byte[] rest = in.readNBytes(HEAD_BYTES - 1);
            byte[] start = new byte[rest.length + 1];
            start[0] = (byte) first;
            System.arraycopy(rest, 0, start, 1, rest.length);
            return start;
        }
    }

    private static Intake sound(Path file, FileKind kind, IntakeOptions options) throws IOException {
        if (!options.table().unsaid()) {
            throw BadInput.in(file).found("sound", "a table, for its separator, time or columns were stated");
        }
        return new Intake.Streamed(SoundReader.open(file, kind, options));
    }

    private static Intake text(Path file, byte[] head, IntakeOptions options) throws IOException {
        String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
        for (String ending : SOUND_ENDINGS) {
            if (name.endsWith(ending)) {
                throw BadInput.in(file)
                        .line(1)
                        .found("text that starts \"" + firstWords(head) + "\"", "a sound file, as its name says");
            }
        }
        return StampedTable.read(file, head, options);
    }

    private static String firstWords(byte[] head) {
        TextEncoding encoding = TextEncoding.of(head);
        String text = new String(
                head, encoding.markBytes(), Math.min(head.length - encoding.markBytes(), 200), encoding.charset());
        String line = text.strip().lines().findFirst().orElse("").strip();
        return line.length() > 30 ? line.substring(0, 30) + "…" : line;
    }
}
