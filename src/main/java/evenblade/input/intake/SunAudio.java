package evenblade.input.intake;

import evenblade.input.audio.SampleCoding;
import java.io.IOException;
import java.nio.ByteBuffer;

/** Finds the samples in an AU file. */
final class SunAudio {
    private static final int HEADER = 24; // six words of four bytes

    private SunAudio() {}

    static PcmLayout parse(HeaderBytes header) throws IOException {
        ByteBuffer bytes = header.at(0, HEADER, "the AU header");
        long dataAt = Integer.toUnsignedLong(bytes.getInt(4));
        long declared = Integer.toUnsignedLong(bytes.getInt(8));
        int encoding = bytes.getInt(12);
        long rateHz = Integer.toUnsignedLong(bytes.getInt(16));
        long channels = Integer.toUnsignedLong(bytes.getInt(20));
        if (channels == 0 || channels > Short.MAX_VALUE || rateHz == 0) {
            throw header.place(16).found(channels + " channels at " + rateHz + " Hz", "at least one of each");
        }
        if (dataAt < HEADER || dataAt > header.size()) {
            throw header.place(4)
                    .found("samples from byte " + dataAt + " on", "a byte behind the header and in the file");
        }
        SampleCoding coding =
                switch (encoding) {
                    case 2 -> SampleCoding.SIGNED_8;
                    case 3 -> SampleCoding.SIGNED_16_BIG;
                    case 4 -> SampleCoding.SIGNED_24_BIG;
                    case 5 -> SampleCoding.SIGNED_32_BIG;
                    case 6 -> SampleCoding.FLOAT_32_BIG;
                    case 7 -> SampleCoding.FLOAT_64_BIG;
                    default ->
                        throw header.place(12)
                                .found(
                                        switch (encoding) {
                                            case 1 -> "µ-law samples (lossy)";
                                            case 27 -> "A-law samples (lossy)";
                                            default -> "samples of AU encoding " + encoding;
                                        },
                                        "8, 16, 24 or 32 bit PCM or 32 or 64 bit float");
                };
        DataLength length = DataLength.of(
                header.place(dataAt), declared, header.size() - dataAt, false, coding.bytes() * (int) channels, rateHz);
        return new PcmLayout(
                "au", coding, coding.bits(), (int) channels, rateHz, dataAt, length.frames(), length.warnings());
    }
}
