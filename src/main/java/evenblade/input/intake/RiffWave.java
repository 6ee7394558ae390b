package evenblade.input.intake;

import evenblade.input.audio.SampleCoding;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/** Finds the samples in a RIFF WAVE file (also RF64 and BW64, for more than 4 GB). */
final class RiffWave {
    private static final int PCM = 1; // RFC 2361
    private static final int IEEE_FLOAT = 3; // RFC 2361
    private static final int EXTENSIBLE = 0xFFFE; // the kind stands in a longer format chunk
    private static final int FORM_HEADER = 12; // 'RIFF', size, 'WAVE'
    private static final int CHUNK_HEADER = 8; // name and size
    private static final int FMT_LEAST = 16; // kind, channels, rates, block, bits
    private static final int FMT_EXTENSIBLE = 40; // with valid bits, loudspeakers and the kind's long name
    private static final long IN_DS64 = 0xFFFF_FFFFL; // EBU Tech 3306: the size stands in the ds64 chunk
    /** Bytes behind the declared samples that are no chunk but too few to be lost sound. */
    private static final int STRAY_BYTES = 4096;

    private record Format(SampleCoding coding, int bits, int channels, long rateHz) {}

    private final HeaderBytes header;
    private Format format;
    private long ds64DataBytes = -1;

    private RiffWave(HeaderBytes header) {
        this.header = header;
    }

    /** Walks the chunks, in whatever order they come, up to the samples. */
    static PcmLayout parse(HeaderBytes header) throws IOException {
        return new RiffWave(header).walk();
    }

    private PcmLayout walk() throws IOException {
        header.at(0, FORM_HEADER, "the RIFF header");
        long at = FORM_HEADER;
        long dataAt = -1;
        long dataBytes = 0;
        while (at + CHUNK_HEADER <= header.size()) {
            ByteBuffer chunk = header.at(at, CHUNK_HEADER, "a chunk header");
            if (!named(chunk)) {
                break; // no chunk: gigabytes of it would be walked through in vain
            }
            String name = HeaderBytes.name(chunk, 0);
            long size = Integer.toUnsignedLong(chunk.getInt(4));
            long body = at + CHUNK_HEADER;
            if (name.equals("fmt ")) {
                format = format(body, size);
            } else if (name.equals("ds64")) {
                ds64DataBytes = header.at(body, 16, "the ds64 chunk").getLong(8);
            } else if (name.equals("data")) {
                dataAt = body;
                dataBytes = size == IN_DS64 && ds64DataBytes > 0 ? ds64DataBytes : size;
                if (format != null) {
                    return layout(dataAt, dataBytes);
                }
                size = dataBytes;
            }
            at = body + size + (size & 1);
        }
        if (dataAt >= 0 && format != null) {
            return layout(dataAt, dataBytes);
        }
        if (format == null) {
            throw header.place(Math.min(at, header.size()))
                    .found("a WAV file without a format chunk", "a chunk \"fmt \" that says how samples are stored");
        }
        throw header.place(Math.min(at, header.size()))
                .found("a WAV file that ends before its samples", "a chunk \"data\"");
    }

    private Format format(long body, long size) throws IOException {
        if (size < FMT_LEAST) {
            throw header.place(body).found("a format chunk of " + size + " bytes", "at least " + FMT_LEAST);
        }
        ByteBuffer fmt = header.at(body, (int) Math.min(size, FMT_EXTENSIBLE), "the format chunk");
        int tag = Short.toUnsignedInt(fmt.getShort(0));
        int channels = Short.toUnsignedInt(fmt.getShort(2));
        long rateHz = Integer.toUnsignedLong(fmt.getInt(4));
        int frameBytes = Short.toUnsignedInt(fmt.getShort(12));
        int bits = Short.toUnsignedInt(fmt.getShort(14));
        int validBits = bits;
        if (tag == EXTENSIBLE && fmt.limit() >= FMT_EXTENSIBLE) {
            validBits = Short.toUnsignedInt(fmt.getShort(18));
            tag = Short.toUnsignedInt(fmt.getShort(24));
        }
        if (channels == 0 || rateHz == 0) {
            throw header.place(body)
                    .found(channels + " channels at " + rateHz + " Hz in the format chunk", "at least one of each");
        }
        int containerBits =
                frameBytes % channels == 0 && frameBytes > 0 ? 8 * frameBytes / channels : (bits + 7) / 8 * 8;
        SampleCoding coding = coding(body, tag, containerBits);
        return new Format(
                coding,
                validBits > 0 && validBits < bits ? validBits : Math.min(bits, containerBits),
                channels,
                rateHz);
    }

    private SampleCoding coding(long body, int tag, int bits) {
        if (tag == PCM && bits == 8) {
            return SampleCoding.UNSIGNED_8;
        }
        if (tag == PCM && (bits == 16 || bits == 24 || bits == 32)) {
            return SampleCoding.signed(bits, ByteOrder.LITTLE_ENDIAN);
        }
        if (tag == IEEE_FLOAT && (bits == 32 || bits == 64)) {
            return SampleCoding.floating(bits, ByteOrder.LITTLE_ENDIAN);
        }
        String found =
                switch (tag) {
                    case PCM -> bits + " bit whole-number samples";
                    case IEEE_FLOAT -> bits + " bit floating-point samples";
                    case 2, 0x11 -> "ADPCM samples (lossy)";
                    case 6 -> "A-law samples (lossy)";
                    case 7 -> "µ-law samples (lossy)";
                    case 0x50, 0x55 -> "MPEG samples (lossy)";
                    default -> "samples of WAV format " + tag;
                };
        throw header.place(body).found(found, "8, 16, 24 or 32 bit PCM or 32 or 64 bit float");
    }

    private PcmLayout layout(long dataAt, long declared) throws IOException {
        long available = header.size() - dataAt;
        int frameBytes = format.coding().bytes() * format.channels();
        DataLength length = DataLength.of(
                header.place(dataAt), declared, available, goesOn(dataAt, declared), frameBytes, format.rateHz());
        return new PcmLayout(
                "wav",
                format.coding(),
                format.bits(),
                format.channels(),
                format.rateHz(),
                dataAt,
                length.frames(),
                length.warnings());
    }

    /** Whether what follows the declared samples is no chain of chunks but more samples. */
    private boolean goesOn(long dataAt, long declared) throws IOException {
        long at = dataAt + declared + (declared & 1);
        if (header.size() - at < STRAY_BYTES) {
            return false;
        }
        while (at + CHUNK_HEADER <= header.size()) {
            ByteBuffer chunk = header.at(at, CHUNK_HEADER, "a chunk header");
            if (!named(chunk)) {
                return true;
            }
            long size = Integer.toUnsignedLong(chunk.getInt(4));
            at += CHUNK_HEADER + size + (size & 1);
        }
        return at > header.size() + 1;
    }

    /** Whether a chunk begins there: its name is four printable letters. */
    private static boolean named(ByteBuffer chunk) {
        for (int i = 0; i < 4; i++) {
            if (chunk.get(i) < ' ' || chunk.get(i) > '~') {
                return false;
            }
        }
        return true;
    }
}
