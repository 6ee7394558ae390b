package evenblade.input.intake;

import evenblade.base.problem.BadInput;
import java.nio.file.Path;
import java.util.Locale;

/** Refuses, before it is read, a table that the memory given to the program can't hold. */
final class TableSize {
    /** Each number is held as read and as kept, in eight bytes each. */
    private static final int BYTES_PER_NUMBER = 16;

    /** What ordering and measuring the stamps takes. */
    private static final int BYTES_PER_ROW = 64;

    private static final double SHARE_OF_MEMORY = 0.8; // the rest is for what is worked out from it; ours

    private TableSize() {}

    /**
     * Estimates the memory needed from the shape of the first lines.
     *
     * @param bytes size of the file
     * @param characters estimated number of its characters
     * @param head its first characters
     */
    static void require(Path file, long bytes, double characters, String head, TableShape shape) {
        long lines = Math.max(1, head.lines().count());
        double rows = characters * lines / head.length();
        double needed = rows * (shape.columns() * BYTES_PER_NUMBER + BYTES_PER_ROW);
        double available = SHARE_OF_MEMORY * Runtime.getRuntime().maxMemory();
        if (needed > available || rows > Integer.MAX_VALUE / 2.0) {
            throw BadInput.in(file)
                    .found(
                            String.format(
                                    Locale.ROOT, "a table of %s, some %.1f million rows", size(bytes), rows / 1e6),
                            String.format(
                                    Locale.ROOT,
                                    "at most %s with the memory this program may use; cut it into shorter runs",
                                    size(bytes * available / needed)));
        }
    }

    private static String size(double bytes) {
        return bytes >= 1e9
                ? String.format(Locale.ROOT, "%.1f GB", bytes / 1e9)
                : String.format(Locale.ROOT, "%.0f MB", bytes / 1e6);
    }
}
