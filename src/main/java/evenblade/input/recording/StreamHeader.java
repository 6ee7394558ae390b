package evenblade.input.recording;

import evenblade.base.units.SignalUnit;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalLong;

/**
 * What is known of sound before its samples are read.
 *
 * @param file where it comes from
 * @param kind {@code wav}, {@code aiff}, {@code au}, {@code flac}
 * @param lossy whether the kind throws away part of the signal
 * @param sampleRateHz frames per second
 * @param bitsPerSample as stored
 * @param frames number of frames as far as known beforehand, for a progress bar
 * @param channels names in file order
 * @param unit of every sample delivered
 * @param fullScale the value, in {@code unit}, that the largest storable sample stands for
 */
public record StreamHeader(
        Path file,
        String kind,
        boolean lossy,
        double sampleRateHz,
        int bitsPerSample,
        OptionalLong frames,
        List<String> channels,
        SignalUnit unit,
        double fullScale) {
    public StreamHeader {
        channels = List.copyOf(channels);
    }
}
