package evenblade.input.intake;

import java.io.BufferedInputStream;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import javazoom.jl.decoder.Bitstream;
import javazoom.jl.decoder.BitstreamException;
import javazoom.jl.decoder.Decoder;
import javazoom.jl.decoder.DecoderException;
import javazoom.jl.decoder.Header;
import javazoom.jl.decoder.SampleBuffer;

/** MPEG audio, layer 3. A tag at the start is skipped here, so that nobody believes the lengths in it. */
final class Mp3Form implements CodedForm {
    private static final int TAG_HEADER_BYTES = 10; // ID3v2.4, 3.1
    /** The notes stand behind the first header and its side information, at most 36 bytes in. */
    private static final int NOTES_WITHIN_BYTES = 64;
    /** Notes at the end of a file take less; what is more and isn't sound was lost, or is sound of another making. */
    private static final int MOST_NOTES_BYTES = 1 << 13;
    /** After so many damaged frames on end, nothing of the file can be trusted. */
    private static final int MOST_DAMAGED_ON_END = 200;

    private static final int HEADER_BYTES = 4; // ISO 11172-3, 2.4.1.3

    /** Bytes of the file that were neither tag nor sound so far. */
    private long otherBytes;

    Mp3Form(long fileBytes) {
        otherBytes = fileBytes;
    }

    @Override
    public void decode(InputStream bytes, Taker taker) throws IOException {
        BufferedInputStream sound = afterTag(bytes);
        long statedFrames = statedFrames(sound);
        Bitstream stream = new Bitstream(sound);
        Decoder decoder = new Decoder();
        Format format = null;
        float[] first = new float[0];
        int damagedOnEnd = 0;
        while (true) {
            try {
                Header header = stream.readFrame();
                if (header == null) {
                    if (otherBytes > MOST_NOTES_BYTES) {
                        taker.damaged();
                    }
                    return;
                }
                otherBytes -= HEADER_BYTES + header.calculate_framesize();
                int channels = header.mode() == Header.SINGLE_CHANNEL ? 1 : 2;
                if (format == null && first.length == 0) {
                    // The first frame may only hold notes, at a bit rate of its own: the second tells.
                    SampleBuffer samples = (SampleBuffer) decoder.decodeFrame(header, stream);
                    first = shares(samples.getBuffer(), samples.getBufferLength());
                    stream.closeFrame();
                    continue;
                }
                if (format == null) {
                    long frames = statedFrames * (first.length / channels);
                    String kind = BitRate.named("mp3", header.bitrate_instant());
                    format = new Format(kind, true, channels, header.frequency(), 16, frames);
                    taker.format(format);
                    if (first.length % channels == 0) {
                        taker.frames(first);
                    }
                }
                SampleBuffer samples = (SampleBuffer) decoder.decodeFrame(header, stream);
                if (channels != format.channels() || header.frequency() != format.rateHz()) {
                    taker.damaged();
                } else {
                    taker.frames(shares(samples.getBuffer(), samples.getBufferLength()));
                    damagedOnEnd = 0;
                }
            } catch (BitstreamException | DecoderException | ArrayIndexOutOfBoundsException | NullPointerException e) {
                taker.damaged();
                if (++damagedOnEnd > MOST_DAMAGED_ON_END) {
                    throw new IOException("damaged throughout", e);
                }
            }
            stream.closeFrame();
        }
    }

    private static float[] shares(short[] samples, int count) {
        float[] shares = new float[count];
        for (int i = 0; i < count; i++) {
            shares[i] = samples[i] / 32768f;
        }
        return shares;
    }

    /**
     * Blocks of sound by the notes that encoders put into the first one; 0 where there are none. The notes start with
     * one of two words, then flags, then the number where the lowest flag is set (common practice, no source).
     */
    private static long statedFrames(BufferedInputStream sound) throws IOException {
        sound.mark(NOTES_WITHIN_BYTES);
        byte[] start = sound.readNBytes(NOTES_WITHIN_BYTES);
        sound.reset();
        String latin = new String(start, StandardCharsets.ISO_8859_1);
        int at = Math.max(latin.indexOf("Xing"), latin.indexOf("Info"));
        return at >= 0 && at + 12 <= start.length && (start[at + 7] & 1) != 0
                ? ByteBuffer.wrap(start).getInt(at + 8) & 0xFFFFFFFFL
                : 0;
    }

    /** An ID3v2 tag says its length in four bytes of seven bits (ID3v2.3, 3.1, from memory). */
    private BufferedInputStream afterTag(InputStream bytes) throws IOException {
        byte[] start = bytes.readNBytes(TAG_HEADER_BYTES);
        if (start.length == TAG_HEADER_BYTES && start[0] == 'I' && start[1] == 'D' && start[2] == '3') {
            long length = (start[6] & 0x7FL) << 21 | (start[7] & 0x7F) << 14 | (start[8] & 0x7F) << 7 | start[9] & 0x7F;
            FlacForm.skip(bytes, length);
            otherBytes -= TAG_HEADER_BYTES + length;
            return new BufferedInputStream(bytes);
        }
        return new BufferedInputStream(new SequenceInputStream(new ByteArrayInputStream(start), bytes));
    }
}
