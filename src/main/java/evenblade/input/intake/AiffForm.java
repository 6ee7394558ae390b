package evenblade.input.intake;

import evenblade.input.audio.SampleCoding;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/** Finds the samples in an AIFF or AIFF-C file. */
final class AiffForm {
    private static final int FORM_HEADER = 12; // 'FORM', size, kind: AIFF 1.3
    private static final int CHUNK_HEADER = 8; // name and size
    private static final int COMM_LEAST = 18; // channels, frames, bits, rate
    private static final int COMM_WITH_TYPE = 22; // and the type of compression: AIFF-C
    private static final int EXTENDED_BIAS = 16383; // of the exponent in an 80-bit extended number

    private record Format(SampleCoding coding, int bits, int channels, double rateHz) {}

    private AiffForm() {}

    static PcmLayout parse(HeaderBytes header) throws IOException {
        boolean compressible = HeaderBytes.name(header.at(0, FORM_HEADER, "the FORM header"), 8)
                .equals("AIFC");
        Format format = null;
        long dataAt = -1;
        long declared = 0;
        long at = FORM_HEADER;
        while (at + CHUNK_HEADER <= header.size() && (format == null || dataAt < 0)) {
            ByteBuffer chunk = header.at(at, CHUNK_HEADER, "a chunk header");
            long size = Integer.toUnsignedLong(chunk.getInt(4));
            long body = at + CHUNK_HEADER;
            switch (HeaderBytes.name(chunk, 0)) {
                case "COMM" -> format = format(header, body, compressible);
                case "SSND" -> {
                    long offset = Integer.toUnsignedLong(
                            header.at(body, 8, "the sound chunk").getInt(0));
                    dataAt = body + 8 + offset;
                    declared = Math.max(0, size - 8 - offset);
                }
                default -> {}
            }
            at = body + size + (size & 1);
        }
        if (format == null) {
            throw header.place(header.size())
                    .found("an AIFF file without a format chunk", "a chunk \"COMM\" that says how samples are stored");
        }
        if (dataAt < 0) {
            throw header.place(header.size()).found("an AIFF file that ends before its samples", "a chunk \"SSND\"");
        }
        int frameBytes = format.coding().bytes() * format.channels();
        DataLength length = DataLength.of(
                header.place(dataAt), declared, header.size() - dataAt, false, frameBytes, format.rateHz());
        return new PcmLayout(
                "aiff",
                format.coding(),
                format.bits(),
                format.channels(),
                format.rateHz(),
                dataAt,
                length.frames(),
                length.warnings());
    }

    private static Format format(HeaderBytes header, long body, boolean compressible) throws IOException {
        ByteBuffer comm = header.at(body, compressible ? COMM_WITH_TYPE : COMM_LEAST, "the format chunk");
        int channels = Short.toUnsignedInt(comm.getShort(0));
        int bits = Short.toUnsignedInt(comm.getShort(6));
        double rateHz = extended(Short.toUnsignedInt(comm.getShort(8)), comm.getLong(10));
        if (channels == 0 || !(rateHz > 0)) {
            throw header.place(body)
                    .found(channels + " channels at " + rateHz + " Hz in the format chunk", "at least one of each");
        }
        String type = compressible ? HeaderBytes.name(comm, 18) : "NONE";
        int container = (bits + 7) / 8 * 8;
        boolean whole = container >= 8 && container <= 32;
        return switch (type) {
            case "NONE", "twos" -> {
                requireWhole(header, body, whole, bits);
                yield new Format(SampleCoding.signed(container, ByteOrder.BIG_ENDIAN), bits, channels, rateHz);
            }
            case "sowt" -> {
                requireWhole(header, body, whole, bits);
                yield new Format(SampleCoding.signed(container, ByteOrder.LITTLE_ENDIAN), bits, channels, rateHz);
            }
            case "fl32", "FL32" -> new Format(SampleCoding.FLOAT_32_BIG, 32, channels, rateHz);
            case "fl64", "FL64" -> new Format(SampleCoding.FLOAT_64_BIG, 64, channels, rateHz);
            default ->
                throw header.place(body + 18)
                        .found("AIFF-C samples of type \"" + type + "\"", "NONE, twos, sowt, fl32 or fl64");
        };
    }

    private static void requireWhole(HeaderBytes header, long body, boolean whole, int bits) {
        if (!whole) {
            throw header.place(body).found(bits + " bit samples", "1 to 32 bit samples");
        }
    }

    /** An 80-bit extended number: exponent biased by 16383, mantissa with its leading one. */
    private static double extended(int exponent, long mantissa) {
        double unsigned = (mantissa >>> 1) * 2.0 + (mantissa & 1);
        return Math.scalb(unsigned, exponent - EXTENDED_BIAS - 63);
    }
}
