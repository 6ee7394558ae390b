package evenblade.input.recording;

import java.nio.file.Path;
import java.util.List;

/**
 * The file a recording came from, as it lies on disk.
 *
 * @param file the file as the user named it
 * @param sha256 of its bytes
 * @param kind {@code wav}, {@code aiff}, {@code au}, {@code flac}, {@code csv} or another short name
 * @param lossy whether the kind throws away part of the signal
 * @param sampleRateHz of the file, before any reduction
 * @param durationS of the file
 * @param channels the names of all its channels, in file order
 */
public record Source(
        Path file,
        FileHash sha256,
        String kind,
        boolean lossy,
        double sampleRateHz,
        double durationS,
        List<String> channels) {
    public Source {
        channels = List.copyOf(channels);
    }
}
