package evenblade.input.capture;

import evenblade.input.audio.SampleCoding;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/**
 * How a live input hands over its samples.
 *
 * @param rateHz frames per second
 * @param channels samples per frame
 * @param coding how one sample lies in bytes, little-endian whole numbers of 16, 24 or 32 bits
 */
public record InputFormat(int rateHz, int channels, SampleCoding coding) {
    public InputFormat {
        if (rateHz < 1 || channels < 1) {
            throw new IllegalArgumentException(rateHz + " Hz, " + channels + " channels");
        }
    }

    public int frameBytes() {
        return channels * coding.bytes();
    }

    /** Bytes of so many seconds. */
    public long bytesOf(double seconds) {
        return Math.round(seconds * rateHz) * frameBytes();
    }

    /** What a reader of the file will call the channels. */
    public List<String> channelNames() {
        return switch (channels) {
            case 1 -> List.of("mono");
            case 2 -> List.of("left", "right");
            default ->
                IntStream.rangeClosed(1, channels).mapToObj(i -> "channel " + i).toList();
        };
    }

    /** For people: {@code 48000 Hz, 2 channels, 24 bit}. */
    public String text() {
        return String.format(
                Locale.ROOT, "%d Hz, %d channel%s, %d bit", rateHz, channels, channels == 1 ? "" : "s", coding.bits());
    }
}
