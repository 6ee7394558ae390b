package evenblade.rig;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/** Writes stamped samples as text: time in seconds, then the channels. */
final class CsvFile {
    private CsvFile() {}

    static Path write(Path file, double[] stamps, List<Sensor> sensors, double[][] values, double repeats)
            throws IOException {
        Dice twice = new Dice(stamps.length); // which rows come twice: chance, the same for the same run
        try (BufferedWriter out = Files.newBufferedWriter(file)) {
            out.write("time (s)");
            for (Sensor sensor : sensors) {
                out.write("," + sensor.name() + " (" + (sensor.unit().equals("m/s2") ? "m/s²" : sensor.unit()) + ")");
            }
            out.write("\n");
            for (int i = 0; i < stamps.length; i++) {
                StringBuilder row = new StringBuilder(String.format(Locale.ROOT, "%.6f", stamps[i]));
                for (double[] channel : values) {
                    row.append(String.format(Locale.ROOT, ",%.6g", channel[i]));
                }
                row.append('\n');
                out.write(row.toString());
                if (twice.chance(repeats)) {
                    out.write(row.toString());
                }
            }
        }
        return file;
    }
}
