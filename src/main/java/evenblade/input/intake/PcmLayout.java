package evenblade.input.intake;

import evenblade.base.fact.Warning;
import evenblade.input.audio.SampleCoding;
import java.util.List;

/**
 * Where the samples of an uncompressed sound file lie and how.
 *
 * @param kind {@code wav}, {@code aiff} or {@code au}
 * @param coding of one sample in its container
 * @param bitsPerSample that hold something, at most those of the container
 * @param channels samples per frame
 * @param rateHz frames per second
 * @param dataOffset byte of the first sample
 * @param frames whole frames there
 * @param warnings what was repaired
 */
record PcmLayout(
        String kind,
        SampleCoding coding,
        int bitsPerSample,
        int channels,
        double rateHz,
        long dataOffset,
        long frames,
        List<Warning> warnings) {
    PcmLayout {
        warnings = List.copyOf(warnings);
    }

    int frameBytes() {
        return coding.bytes() * channels;
    }
}
