package evenblade.input.intake;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Iterator;
import java.util.NoSuchElementException;
import java.util.Optional;

/**
 * The first AAC track of an MP4 file: where its samples lie and how to decode them (ISO/IEC 14496-12 and 14496-1, from
 * memory). Every count is held against the size of the box that it stands in, and no box is larger than the file.
 */
final class Mp4Track {
    /** Tables of a track for ten hours come to a few megabytes. */
    private static final long LARGEST_TABLE = 64L << 20;
    /** A frame of AAC has at most 6144 bits a channel, of which there are at most eight. */
    private static final int LARGEST_SAMPLE = 6144;

    private static final int MOST_BOXES = 100_000; // far more than a film has; ends a file that points to itself

    private final byte[] setting;
    private final ByteBuffer sizes;
    private final ByteBuffer chunks;
    private final ByteBuffer offsets;
    private final boolean wideOffsets;
    private final long fileBytes;
    private final double seconds;

    private Mp4Track(Boxes boxes, Box track) throws IOException {
        Box media = boxes.within(track, "mdia");
        Box table = boxes.within(boxes.within(media, "minf"), "stbl");
        setting = setting(boxes.bytes(boxes.within(table, "stsd")));
        sizes = boxes.bytes(boxes.within(table, "stsz"));
        chunks = boxes.bytes(boxes.within(table, "stsc"));
        Optional<Box> wide = boxes.find(table, "co64");
        wideOffsets = wide.isPresent();
        offsets = boxes.bytes(wide.isPresent() ? wide.get() : boxes.within(table, "stco"));
        fileBytes = boxes.size;
        seconds = seconds(boxes.bytes(boxes.within(media, "mdhd")));
    }

    /** One frame of sound as it lies in the file. */
    record Sample(long offset, int bytes) {}

    private record Box(String type, long from, long to) {}

    /** The track. */
    static Mp4Track ofSound(FileChannel channel) throws IOException {
        Boxes boxes = new Boxes(channel, channel.size());
        Box movie = boxes.within(new Box("", 0, boxes.size), "moov");
        for (long at = movie.from(); at < movie.to(); ) {
            Box box = boxes.at(at, movie.to());
            if (box.type().equals("trak") && isSound(boxes, box)) {
                return new Mp4Track(boxes, box);
            }
            at = box.to();
        }
        throw new IOException("a film without sound");
    }

    private static boolean isSound(Boxes boxes, Box track) throws IOException {
        Optional<Box> media = boxes.find(track, "mdia");
        Optional<Box> handler = media.isEmpty() ? Optional.empty() : boxes.find(media.get(), "hdlr");
        if (handler.isEmpty()) {
            return false;
        }
        ByteBuffer bytes = boxes.bytes(handler.get());
        return bytes.limit() >= 12 && HeaderBytes.name(bytes, 8).equals("soun");
    }

    /** What the decoder has to know: the specific configuration in the descriptor of the elementary stream. */
    byte[] decoderSetting() {
        return setting.clone();
    }

    /** Channels as stored; a decoder may make two of one. */
    int storedChannels() {
        // Five bits of kind, four of rate, then four of channels (ISO/IEC 14496-3, 1.6.2.1, from memory).
        return setting.length < 2 ? 0 : setting[1] >> 3 & 15;
    }

    /** Length by the header; 0 where it doesn't say. */
    double seconds() {
        return seconds;
    }

    /** Average over the track; 0 where it can't be found. */
    double bitsPerSecond() throws IOException {
        double bytes = 0;
        for (Sample sample : samples()) {
            bytes += sample.bytes();
        }
        return seconds > 0 ? 8 * bytes / seconds : 0;
    }

    private static double seconds(ByteBuffer header) throws IOException {
        boolean wide = header.limit() > 0 && header.get(0) == 1;
        int at = wide ? 20 : 12;
        need(header, at + (wide ? 12 : 8));
        double duration = wide ? header.getLong(at + 4) : header.getInt(at + 4) & 0xFFFFFFFFL;
        return duration / Math.max(1, header.getInt(at) & 0xFFFFFFFFL);
    }

    private static byte[] setting(ByteBuffer description) throws IOException {
        need(description, 16 + 28);
        String coding = HeaderBytes.name(description, 12);
        if (!coding.equals("mp4a")) {
            throw new IOException("sound of the kind '" + coding + "'");
        }
        String all = new String(description.array(), StandardCharsets.ISO_8859_1);
        int at = all.indexOf("esds", 16);
        if (at < 0) {
            throw new IOException("no setting for its decoder");
        }
        at += 8;
        // Descriptors inside each other: stream (3), decoder (4), its own setting (5).
        while (at + 2 < description.limit()) {
            int tag = description.get(at++);
            int length = 0;
            for (int i = 0; i < 4 && at < description.limit(); i++) {
                int each = description.get(at++) & 0xFF;
                length = length << 7 | each & 0x7F;
                if (each < 0x80) {
                    break;
                }
            }
            if (tag == 3) {
                at += 3;
            } else if (tag == 4) {
                at += 13;
            } else if (tag == 5 && length > 0 && at + length <= description.limit()) {
                return Arrays.copyOfRange(description.array(), at, at + length);
            } else {
                break;
            }
        }
        throw new IOException("no setting for its decoder");
    }

    /** The frames of sound in their order. */
    Iterable<Sample> samples() throws IOException {
        need(sizes, 12);
        need(chunks, 8);
        need(offsets, 8);
        return () -> new Walk();
    }

    private final class Walk implements Iterator<Sample> {
        private final int same = sizes.getInt(4);
        private final long count =
                Math.min(sizes.getInt(8) & 0xFFFFFFFFL, same != 0 ? fileBytes : (sizes.limit() - 12) / 4);
        private final int chunkCount = (offsets.limit() - 8) / (wideOffsets ? 8 : 4);
        private final int runs = (chunks.limit() - 8) / 12;
        private long sample;
        private int chunk = -1;
        private int run = -1;
        private long leftInChunk;
        private long offset;

        @Override
        public boolean hasNext() {
            while (leftInChunk == 0 && sample < count && chunk + 1 < chunkCount) {
                chunk++;
                offset = wideOffsets ? offsets.getLong(8 + 8 * chunk) : offsets.getInt(8 + 4 * chunk) & 0xFFFFFFFFL;
                while (run + 1 < runs && chunks.getInt(8 + 12 * (run + 1)) <= chunk + 1) {
                    run++;
                }
                leftInChunk = run < 0 ? 0 : chunks.getInt(8 + 12 * run + 4) & 0xFFFFFFFFL;
            }
            return leftInChunk > 0 && sample < count && size() > 0 && offset >= 0 && offset < fileBytes;
        }

        private int size() {
            int size = same != 0 ? same : sizes.getInt(12 + 4 * (int) sample);
            return size > LARGEST_SAMPLE ? 0 : size;
        }

        @Override
        public Sample next() {
            if (!hasNext()) {
                throw new NoSuchElementException();
            }
            Sample next = new Sample(offset, size());
            offset += next.bytes();
            sample++;
            leftInChunk--;
            return next;
        }
    }

    private static void need(ByteBuffer bytes, int length) throws IOException {
        if (bytes.limit() < length) {
            throw new IOException("a table that is too short");
        }
    }

    /** Finds and reads boxes. */
    private static final class Boxes {
        private final FileChannel channel;
        private final long size;
        private int read;

        Boxes(FileChannel channel, long size) {
            this.channel = channel;
            this.size = size;
        }

        Box within(Box outer, String type) throws IOException {
            Optional<Box> found = find(outer, type);
            if (found.isEmpty()) {
                throw new IOException("no part '" + type + "', as in a file that was cut off");
            }
            return found.get();
        }

        Optional<Box> find(Box outer, String type) throws IOException {
            for (long at = outer.from(); at + 8 <= outer.to(); ) {
                Box box = at(at, outer.to());
                if (box.type().equals(type)) {
                    return Optional.of(box);
                }
                at = box.to();
            }
            return Optional.empty();
        }

        Box at(long at, long end) throws IOException {
            if (++read > MOST_BOXES) {
                throw new IOException("parts without end");
            }
            ByteBuffer header = read(at, (int) Math.min(16, end - at));
            need(header, 8);
            long length = header.getInt(0) & 0xFFFFFFFFL;
            long from = at + 8;
            if (length == 1) {
                need(header, 16);
                length = header.getLong(8);
                from = at + 16;
            } else if (length == 0) {
                length = end - at;
            }
            if (length < from - at || length > end - at) {
                // A file that was cut off ends inside its last box.
                length = end - at;
            }
            return new Box(HeaderBytes.name(header, 4), Math.min(from, at + length), at + length);
        }

        ByteBuffer bytes(Box box) throws IOException {
            if (box.to() - box.from() > LARGEST_TABLE) {
                throw new IOException("a table of impossible size");
            }
            return read(box.from(), (int) (box.to() - box.from()));
        }

        private ByteBuffer read(long at, int length) throws IOException {
            ByteBuffer bytes = ByteBuffer.allocate((int) Math.max(0, Math.min(length, size - at)));
            while (bytes.hasRemaining() && channel.read(bytes, at + bytes.position()) > 0) {
                // until it is whole
            }
            return bytes.flip();
        }
    }
}
