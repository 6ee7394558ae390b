package evenblade.input.intake;

import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;

/** The packets of the first stream in an Ogg file (RFC 3533, 6, from memory). */
final class OggPackets {
    /** Far above any packet of sound. */
    private static final int LONGEST_PACKET = 1 << 20;

    private static final int FIXED_BYTES = 27; // RFC 3533, section 6
    private static final int FULL_SEGMENT = 255; // RFC 3533: a packet goes on behind a full one

    private final DataInputStream in;
    private final CodedForm.Taker taker;
    private final Deque<byte[]> ready = new ArrayDeque<>();
    private final ByteArrayOutputStream open = new ByteArrayOutputStream();
    private Optional<Integer> serial = Optional.empty();
    private int pageNumber = -1;

    OggPackets(InputStream bytes, CodedForm.Taker taker) {
        this.in = new DataInputStream(bytes);
        this.taker = taker;
    }

    /** The next packet; empty at the end. */
    Optional<byte[]> next() throws IOException {
        while (ready.isEmpty()) {
            if (!page()) {
                return Optional.empty();
            }
        }
        return Optional.of(ready.poll());
    }

    private boolean page() throws IOException {
        if (!found()) {
            return false;
        }
        byte[] header = new byte[FIXED_BYTES - 4];
        try {
            in.readFully(header);
            int sizes = header[FIXED_BYTES - 5] & 0xFF;
            byte[] lacing = new byte[sizes];
            in.readFully(lacing);
            int length = 0;
            for (byte each : lacing) {
                length += each & 0xFF;
            }
            byte[] body = new byte[length];
            in.readFully(body);
            int from = little(header, 10);
            if (serial.isEmpty()) {
                serial = Optional.of(from);
            }
            if (serial.get() == from) {
                take(header, lacing, body);
            }
            return true;
        } catch (EOFException e) {
            taker.damaged();
            return false;
        }
    }

    private void take(byte[] header, byte[] lacing, byte[] body) throws IOException {
        int number = little(header, 14);
        boolean follows = number == pageNumber + 1;
        if (!follows) {
            taker.damaged();
        }
        pageNumber = number;
        boolean goesOn = (header[1] & 1) != 0;
        boolean skipping = goesOn && (open.size() == 0 || !follows);
        if (!goesOn || !follows) {
            open.reset();
        }
        int at = 0;
        for (byte each : lacing) {
            int size = each & 0xFF;
            if (!skipping) {
                open.write(body, at, size);
            }
            at += size;
            if (open.size() > LONGEST_PACKET) {
                throw new IOException("a packet without end");
            }
            if (size < FULL_SEGMENT) {
                if (!skipping) {
                    ready.add(open.toByteArray());
                }
                open.reset();
                skipping = false;
            }
        }
    }

    /** Goes to the next capture pattern, which stands at once in an undamaged file. */
    private boolean found() throws IOException {
        int last = 0;
        for (long passed = 0; ; passed++) {
            int each = in.read();
            if (each < 0) {
                if (passed > 0) {
                    taker.damaged();
                }
                return false;
            }
            last = last << 8 | each;
            if (last == 0x4F676753) { // "OggS"
                if (passed > 3) {
                    taker.damaged();
                }
                return true;
            }
        }
    }

    static int little(byte[] bytes, int at) {
        return bytes[at] & 0xFF
                | (bytes[at + 1] & 0xFF) << 8
                | (bytes[at + 2] & 0xFF) << 16
                | (bytes[at + 3] & 0xFF) << 24;
    }
}
