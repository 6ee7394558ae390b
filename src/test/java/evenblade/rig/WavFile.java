package evenblade.rig;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** Writes RIFF WAVE, plain header (format tag 1 for whole numbers, 3 for float). */
public final class WavFile {
    private WavFile() {}

    /** How a sample is stored. */
    public enum Format {
        PCM16(16),
        PCM24(24),
        FLOAT32(32);

        final int bits;

        Format(int bits) {
            this.bits = bits;
        }
    }

    static Path write(Path file, double rateHz, double[][] channels, Format format) throws IOException {
        int width = channels.length * format.bits / 8;
        int bytes = channels[0].length * width;
        ByteBuffer head = ByteBuffer.allocate(44).order(ByteOrder.LITTLE_ENDIAN);
        head.put("RIFF".getBytes(StandardCharsets.US_ASCII)).putInt(36 + bytes + bytes % 2);
        head.put("WAVEfmt ".getBytes(StandardCharsets.US_ASCII)).putInt(16);
        head.putShort((short) (format == Format.FLOAT32 ? 3 : 1)).putShort((short) channels.length);
        head.putInt((int) Math.round(rateHz)).putInt((int) Math.round(rateHz) * width);
        head.putShort((short) width).putShort((short) format.bits);
        head.put("data".getBytes(StandardCharsets.US_ASCII)).putInt(bytes);
        ByteBuffer body = ByteBuffer.allocate(bytes + bytes % 2).order(ByteOrder.LITTLE_ENDIAN);
        double top = Math.pow(2, format.bits - 1);
        for (int i = 0; i < channels[0].length; i++) {
            for (double[] channel : channels) {
                if (format == Format.FLOAT32) {
                    body.putFloat((float) channel[i]);
                } else {
                    int value = (int) Math.max(-top, Math.min(top - 1, Math.round(channel[i] * top)));
                    for (int b = 0; b < format.bits; b += 8) {
                        body.put((byte) (value >> b));
                    }
                }
            }
        }
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file))) {
            out.write(head.array());
            out.write(body.array());
        }
        return file;
    }
}
