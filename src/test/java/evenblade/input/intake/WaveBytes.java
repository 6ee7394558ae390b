package evenblade.input.intake;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** Writes WAV files byte by byte for the tests, so that any part of one can be wrong on purpose. */
final class WaveBytes {
    static final int PCM = 1;
    static final int FLOAT = 3;
    static final int EXTENSIBLE = 0xFFFE;

    private final ByteArrayOutputStream chunks = new ByteArrayOutputStream();
    private String form = "RIFF";

    /** Sample i of lane c as the tests mean it: a sine per lane, well inside full scale. */
    static double sample(int frame, int lane, double rateHz) {
        return 0.5 * Math.sin(2 * Math.PI * (37.3 + 11 * lane) * frame / rateHz);
    }

    WaveBytes form(String name) {
        form = name;
        return this;
    }

    /** A chunk with its pad byte. */
    WaveBytes chunk(String name, byte[] body) {
        return chunk(name, body, body.length);
    }

    /** A chunk whose header gives another length than its body has. */
    WaveBytes chunk(String name, byte[] body, long declared) {
        ByteBuffer header = little(8);
        header.put(name.getBytes(StandardCharsets.US_ASCII)).putInt((int) declared);
        chunks.writeBytes(header.array());
        chunks.writeBytes(body);
        if (body.length % 2 == 1) {
            chunks.write(0);
        }
        return this;
    }

    WaveBytes format(int tag, int channels, int rateHz, int bits) {
        return chunk("fmt ", formatBody(tag, channels, rateHz, bits, 16).array());
    }

    WaveBytes extensible(int tag, int channels, int rateHz, int containerBits, int validBits) {
        ByteBuffer fmt = formatBody(EXTENSIBLE, channels, rateHz, containerBits, 40);
        fmt.putShort(16, (short) 22);
        fmt.putShort(18, (short) validBits);
        fmt.putInt(20, 0);
        fmt.putShort(24, (short) tag);
        fmt.position(26);
        fmt.put(new byte[] {0, 0, 0, 0, 0x10, 0, (byte) 0x80, 0, 0, (byte) 0xaa, 0, 0x38, (byte) 0x9b, 0x71});
        return chunk("fmt ", fmt.array());
    }

    private static ByteBuffer formatBody(int tag, int channels, int rateHz, int bits, int length) {
        int frameBytes = channels * ((bits + 7) / 8);
        return little(length)
                .putShort((short) tag)
                .putShort((short) channels)
                .putInt(rateHz)
                .putInt(rateHz * frameBytes)
                .putShort((short) frameBytes)
                .putShort((short) bits);
    }

    byte[] bytes() {
        ByteBuffer header = little(12);
        header.put(form.getBytes(StandardCharsets.US_ASCII))
                .putInt(chunks.size() + 4)
                .put("WAVE".getBytes(StandardCharsets.US_ASCII));
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        all.writeBytes(header.array());
        all.writeBytes(chunks.toByteArray());
        return all.toByteArray();
    }

    Path writeTo(Path file) {
        return write(file, bytes());
    }

    static Path write(Path file, byte[] bytes) {
        try {
            return Files.write(file, bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The tests' signal in little-endian samples. */
    static byte[] samples(int tag, int bits, int channels, int frames, double rateHz) {
        ByteBuffer data = little(frames * channels * (bits / 8));
        for (int frame = 0; frame < frames; frame++) {
            for (int lane = 0; lane < channels; lane++) {
                put(data, tag, bits, sample(frame, lane, rateHz));
            }
        }
        return data.array();
    }

    static void put(ByteBuffer data, int tag, int bits, double value) {
        if (tag == FLOAT && bits == 32) {
            data.putFloat((float) value);
        } else if (tag == FLOAT) {
            data.putDouble(value);
        } else {
            long whole = Math.round(value * Math.scalb(1.0, bits - 1));
            if (bits == 8) {
                whole += 128;
            }
            for (int b = 0; b < bits / 8; b++) {
                data.put((byte) (whole >> 8 * b));
            }
        }
    }

    static ByteBuffer little(int length) {
        return ByteBuffer.allocate(length).order(ByteOrder.LITTLE_ENDIAN);
    }
}
