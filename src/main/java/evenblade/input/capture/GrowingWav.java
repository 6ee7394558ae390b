package evenblade.input.capture;

import evenblade.input.audio.SampleCoding;
import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;

/**
 * A WAV file that is valid at any moment while it grows: what its header promises is on the disk
 * before the header says so. Samples that came after the last {@link #settle} lie behind the promised
 * ones until the next.
 *
 * <p>Layout: {@code RIFF/WAVE} (Microsoft/IBM Multimedia Programming Interface and Data Specifications 1.0,
 * 1991); the format chunk is extensible where samples are wider than 16 bits or channels more than
 * two. A chunk {@code JUNK} is kept free, which becomes {@code ds64} once the file passes 4 GB (EBU
 * Tech 3306, RF64; from memory). Gaps are marked by a chunk {@code cue} behind the samples.
 */
final class GrowingWav implements Closeable {
    private static final int DS64_BYTES = 28; // EBU Tech 3306: RIFF, data and sample sizes, empty table
    private static final int JUNK_AT = 12; // behind 'RIFF', size and 'WAVE'
    private static final int FMT_AT = JUNK_AT + 8 + DS64_BYTES; // behind the junk chunk that keeps its room
    /** 32 bits of size, less a mebibyte for header and marks. */
    private static final long MOST_IN_RIFF = 0xFFFF_FFFFL - (1 << 20);

    private static final int SPEAKERS_UNSTATED = 0; // channels are sensors, not loudspeakers
    /** The rest of the identifier of a sample kind, behind its first two bytes. */
    private static final byte[] KIND_TAIL = {
        0, 0, 0, 0, 0x10, 0, (byte) 0x80, 0, 0, (byte) 0xAA, 0, 0x38, (byte) 0x9B, 0x71
    };

    private final Path path;
    private final FileChannel file;
    private final InputFormat format;
    private final int dataAt;
    private volatile long dataBytes;

    /** Makes the file, with a header that promises nothing yet. Fails where there is one already. */
    GrowingWav(Path path, InputFormat format) throws IOException {
        this.path = path;
        this.format = format;
        this.file = FileChannel.open(path, StandardOpenOption.WRITE, StandardOpenOption.CREATE_NEW);
        ByteBuffer head = head();
        this.dataAt = head.remaining();
        try {
            writeAll(head, 0);
            file.force(true);
            FolderNames.settle(path);
        } catch (IOException e) {
            file.close();
            throw e;
        }
    }

    /** Bytes of samples written. */
    long dataBytes() {
        return dataBytes;
    }

    /** Appends samples; whole frames. */
    void append(byte[] samples, int length) throws IOException {
        writeAll(ByteBuffer.wrap(samples, 0, length), dataAt + dataBytes);
        dataBytes = dataBytes + length;
    }

    /**
     * Brings the samples that are there to the disk, then lets the header promise them. May take long on a busy
     * disk; {@link #append} goes on meanwhile from another thread.
     */
    void settle() throws IOException {
        long promised = dataBytes;
        file.force(false);
        promise(promised, dataAt + promised);
        file.force(false);
        FolderNames.requireThere(path);
    }

    /** Settles, and marks places behind the samples. */
    void finish(List<Long> markedFrames) throws IOException {
        long end = dataAt + dataBytes;
        if ((dataBytes & 1) == 1) {
            writeAll(ByteBuffer.wrap(new byte[1]), end);
            end++;
        }
        if (!markedFrames.isEmpty() && dataBytes < MOST_IN_RIFF) {
            ByteBuffer cue = cue(markedFrames);
            int length = cue.remaining();
            writeAll(cue, end);
            end += length;
        }
        file.force(false);
        promise(dataBytes, end);
        file.force(true);
    }

    @Override
    public void close() throws IOException {
        file.close();
    }

    private void promise(long samples, long endOfFile) throws IOException {
        boolean wide = endOfFile > MOST_IN_RIFF;
        if (wide) {
            ByteBuffer ds64 = little(8 + DS64_BYTES);
            ds64.put(ascii("ds64")).putInt(DS64_BYTES);
            ds64.putLong(endOfFile - 8).putLong(samples).putLong(samples / format.frameBytes());
            ds64.putInt(0).flip();
            writeAll(ds64, JUNK_AT);
        }
        ByteBuffer data = little(4);
        data.putInt(wide ? -1 : (int) samples).flip();
        writeAll(data, dataAt - 4L);
        ByteBuffer riff = little(8);
        riff.put(ascii(wide ? "RF64" : "RIFF"))
                .putInt(wide ? -1 : (int) (endOfFile - 8))
                .flip();
        writeAll(riff, 0);
    }

    private ByteBuffer head() {
        SampleCoding coding = format.coding();
        boolean extensible = coding.bits() > 16 || format.channels() > 2;
        int fmtBytes = extensible ? 40 : 16;
        ByteBuffer head = little(FMT_AT + 8 + fmtBytes + 8);
        head.put(ascii("RIFF")).putInt(head.capacity() - 8).put(ascii("WAVE"));
        head.put(ascii("JUNK")).putInt(DS64_BYTES).put(new byte[DS64_BYTES]);
        head.put(ascii("fmt ")).putInt(fmtBytes);
        head.putShort((short) (extensible ? 0xFFFE : 1)).putShort((short) format.channels());
        head.putInt(format.rateHz()).putInt(format.rateHz() * format.frameBytes());
        head.putShort((short) format.frameBytes()).putShort((short) coding.bits());
        if (extensible) {
            head.putShort((short) 22).putShort((short) coding.bits()).putInt(SPEAKERS_UNSTATED);
            head.putShort((short) 1).put(KIND_TAIL);
        }
        return head.put(ascii("data")).putInt(0).flip();
    }

    private static ByteBuffer cue(List<Long> markedFrames) {
        ByteBuffer cue = little(12 + 24 * markedFrames.size());
        cue.put(ascii("cue ")).putInt(4 + 24 * markedFrames.size()).putInt(markedFrames.size());
        for (int i = 0; i < markedFrames.size(); i++) {
            int frame = markedFrames.get(i).intValue();
            cue.putInt(i + 1)
                    .putInt(frame)
                    .put(ascii("data"))
                    .putInt(0)
                    .putInt(0)
                    .putInt(frame);
        }
        return cue.flip();
    }

    private void writeAll(ByteBuffer bytes, long at) throws IOException {
        long position = at;
        while (bytes.hasRemaining()) {
            position += file.write(bytes, position);
        }
    }

    private static ByteBuffer little(int bytes) {
        return ByteBuffer.allocate(bytes).order(ByteOrder.LITTLE_ENDIAN);
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }
}
