package evenblade.keep.practice;

import evenblade.input.recording.TimeBase;
import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/**
 * Writes a table of accelerations as an invented logger program on a phone would: comment lines, one header
 * line, time in milliseconds, now and then a row twice.
 *
 * @param timeHeader header of the first column
 * @param columnHeaders headers of the others, with their unit
 * @param separator between fields
 * @param doubledShare share (0 to 1) of rows written twice
 * @param seed of which ones
 */
public record LoggerFile(
        String timeHeader, List<String> columnHeaders, char separator, double doubledShare, long seed) {
    public LoggerFile {
        columnHeaders = List.copyOf(columnHeaders);
    }

    /**
     * Writes the file anew.
     *
     * @param comments written first, each after {@code # }
     * @param time stamps in seconds, written in milliseconds to the microsecond
     * @param columns values in the unit of their header, written to five decimals
     */
    public void write(Path file, List<String> comments, TimeBase time, List<double[]> columns) throws IOException {
        Random random = new Random(seed);
        try (BufferedWriter out = Files.newBufferedWriter(file, StandardCharsets.UTF_8)) {
            for (String comment : comments) {
                out.write("# " + comment + "\n");
            }
            out.write(timeHeader + separator + String.join(String.valueOf(separator), columnHeaders) + "\n");
            for (int i = 0; i < time.size(); i++) {
                StringBuilder row = new StringBuilder(decimal(1000 * time.at(i), 3));
                for (double[] column : columns) {
                    row.append(separator).append(decimal(column[i], 5));
                }
                row.append('\n');
                out.append(row);
                if (random.nextDouble() < doubledShare) {
                    out.append(row);
                }
            }
        }
    }

    private static String decimal(double value, int places) {
        return String.format(Locale.ROOT, "%." + places + "f", value);
    }
}
