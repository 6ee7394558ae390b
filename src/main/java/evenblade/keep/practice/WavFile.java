package evenblade.keep.practice;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * Writes plain PCM WAV with a comment: {@code RIFF/WAVE}, {@code LIST INFO ICMT}, {@code fmt}, {@code data}
 * (Microsoft/IBM Multimedia Programming Interface and Data Specifications 1.0, 1991). A sample is rounded to
 * the nearest step, and held at the largest one where it lies beyond full scale, as a recorder does.
 *
 * @param rateHz frames per second
 * @param bits 16 or 24
 * @param fullScale the value, in the unit of the samples, that a full-scale sample (2^(bits−1) steps) stands for
 * @param comment written into the file
 */
public record WavFile(int rateHz, int bits, double fullScale, String comment) {
    public WavFile {
        if (bits != 16 && bits != 24) {
            throw new IllegalArgumentException(bits + " bits per sample, 16 or 24 can be written");
        }
    }

    /**
     * Writes the file anew.
     *
     * @param channels samples of each channel in its unit, all of one length
     */
    public void write(Path file, List<double[]> channels) throws IOException {
        int frames = channels.get(0).length;
        int frameBytes = channels.size() * bits / 8;
        byte[] info = info();
        int dataBytes = frames * frameBytes;
        ByteBuffer head = ByteBuffer.allocate(44 + info.length).order(ByteOrder.LITTLE_ENDIAN);
        head.put(ascii("RIFF"))
                .putInt(36 + info.length + dataBytes + dataBytes % 2)
                .put(ascii("WAVE"));
        head.put(info);
        head.put(ascii("fmt ")).putInt(16).putShort((short) 1).putShort((short) channels.size());
        head.putInt(rateHz)
                .putInt(rateHz * frameBytes)
                .putShort((short) frameBytes)
                .putShort((short) bits);
        head.put(ascii("data")).putInt(dataBytes);
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file))) {
            out.write(head.array());
            for (int i = 0; i < frames; i++) {
                for (double[] channel : channels) {
                    int step = steps(channel[i]);
                    for (int b = 0; b < bits / 8; b++) {
                        out.write(step >> (8 * b));
                    }
                }
            }
            if (dataBytes % 2 == 1) {
                out.write(0);
            }
        }
    }

    private int steps(double value) {
        int most = (1 << (bits - 1)) - 1;
        long step = Math.round(value / fullScale * (1 << (bits - 1)));
        return (int) Math.max(-most - 1L, Math.min(most, step));
    }

    private byte[] info() {
        byte[] text = (comment + "\0").getBytes(StandardCharsets.US_ASCII);
        int padded = text.length + text.length % 2;
        ByteBuffer chunk = ByteBuffer.allocate(20 + padded).order(ByteOrder.LITTLE_ENDIAN);
        chunk.put(ascii("LIST")).putInt(12 + padded).put(ascii("INFO"));
        chunk.put(ascii("ICMT")).putInt(text.length).put(text);
        return chunk.array();
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }
}
