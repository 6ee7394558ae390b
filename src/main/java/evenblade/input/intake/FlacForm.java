package evenblade.input.intake;

import java.io.ByteArrayInputStream;
import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import org.jflac.FLACDecoder;
import org.jflac.FrameListener;
import org.jflac.frame.Frame;
import org.jflac.metadata.Metadata;
import org.jflac.metadata.StreamInfo;

/**
 * FLAC. Only the stream information reaches the decoder: comments, pictures and tables of places are skipped here,
 * since the decoder believes the counts in them (layout: RFC 9639, 8.1 and 8.2, from memory). The stream information
 * holds the MD5 sum of all samples as they were before coding, which the decoder doesn't compare.
 */
final class FlacForm implements CodedForm {
    private static final int STREAM_INFO_BYTES = 34; // RFC 9639, 8.2
    private static final int BLOCK_START_BYTES = 4 + 4; // "fLaC" and the header of the first block
    private static final int MD5_FROM_BYTE = 18; // of the stream information; RFC 9639, 8.2
    private static final int LAST = 0x80; // RFC 9639, 8.1: the bit of the last metadata block

    @Override
    public void decode(InputStream bytes, Taker taker) throws IOException {
        byte[] start = streamInfoOnly(bytes);
        byte[] stored = Arrays.copyOfRange(start, BLOCK_START_BYTES + MD5_FROM_BYTE, start.length);
        MessageDigest decoded = md5();
        FLACDecoder decoder = new FLACDecoder(new SequenceInputStream(new ByteArrayInputStream(start), bytes));
        decoder.addFrameListener(new FrameListener() {
            @Override
            public void processMetadata(Metadata metadata) {}

            @Override
            public void processFrame(Frame frame) {}

            @Override
            public void processError(String message) {
                taker.damaged();
            }
        });
        decoder.readMetadata();
        StreamInfo info = decoder.getStreamInfo();
        if (info == null) {
            throw new IOException("the FLAC stream information is missing");
        }
        int channels = info.getChannels();
        taker.format(new Format(
                "flac", false, channels, info.getSampleRate(), info.getBitsPerSample(), info.getTotalSamples()));
        int bytesPerSample = (info.getBitsPerSample() + Byte.SIZE - 1) / Byte.SIZE;
        float scale = Math.scalb(1f, 1 - info.getBitsPerSample());
        for (Frame frame = decoder.readNextFrame(); frame != null; frame = decoder.readNextFrame()) {
            int frames = frame.header.blockSize;
            if (frame.header.channels != channels || decoder.getChannelData()[0].getOutput().length < frames) {
                taker.damaged();
                continue;
            }
            float[] block = new float[frames * channels];
            byte[] coded = new byte[block.length * bytesPerSample];
            for (int channel = 0; channel < channels; channel++) {
                int[] samples = decoder.getChannelData()[channel].getOutput();
                for (int i = 0, at = channel; i < frames; i++, at += channels) {
                    block[at] = samples[i] * scale;
                    for (int b = 0; b < bytesPerSample; b++) {
                        coded[at * bytesPerSample + b] = (byte) (samples[i] >> Byte.SIZE * b);
                    }
                }
            }
            decoded.update(coded);
            taker.frames(block);
        }
        // All zeros: the encoder didn't know the sum (RFC 9639, 8.2).
        if (!Arrays.equals(stored, new byte[stored.length]) && !Arrays.equals(stored, decoded.digest())) {
            taker.otherChecksum();
        }
    }

    private static MessageDigest md5() {
        try {
            return MessageDigest.getInstance("MD5");
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java has MD5", impossible);
        }
    }

    private static byte[] streamInfoOnly(InputStream bytes) throws IOException {
        DataInputStream in = new DataInputStream(bytes);
        in.readInt(); // "fLaC", by which the kind was told
        byte[] start = new byte[BLOCK_START_BYTES + STREAM_INFO_BYTES];
        boolean found = false;
        boolean last = false;
        while (!last) {
            int header = in.readInt();
            last = header < 0;
            int length = header & 0xFFFFFF;
            if ((header >>> 24 & 0x7F) == 0 && length == STREAM_INFO_BYTES && !found) {
                in.readFully(start, BLOCK_START_BYTES, STREAM_INFO_BYTES);
                found = true;
            } else {
                skip(in, length);
            }
        }
        if (!found) {
            throw new IOException("the FLAC stream information is missing");
        }
        System.arraycopy(
                new byte[] {'f', 'L', 'a', 'C', (byte) LAST, 0, 0, STREAM_INFO_BYTES}, 0, start, 0, BLOCK_START_BYTES);
        return start;
    }

    static void skip(InputStream in, long length) throws IOException {
        long left = length;
        while (left > 0) {
            long skipped = in.skip(left);
            if (skipped <= 0) {
                throw new EOFException("the file ends too early");
            }
            left -= skipped;
        }
    }
}
