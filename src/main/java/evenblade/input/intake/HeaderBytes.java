package evenblade.input.intake;

import evenblade.base.problem.BadInput;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;

/** Looks into the header of an open sound file at any byte; a header that ends too early is bad input. */
record HeaderBytes(Path file, FileChannel channel, long size, ByteOrder order) {
    /**
     * The bytes from an offset on.
     *
     * @param what the part of the header they belong to, for the complaint
     */
    ByteBuffer at(long offset, int length, String what) throws IOException {
        ByteBuffer bytes = ByteBuffer.allocate(length).order(order);
        while (bytes.hasRemaining()) {
            if (channel.read(bytes, offset + bytes.position()) < 0) {
                throw BadInput.in(file)
                        .atByte(size)
                        .found("the file ends inside " + what, length + " bytes of it from byte " + offset + " on");
            }
        }
        return bytes.flip();
    }

    BadInput.Place place(long offset) {
        return BadInput.in(file).atByte(offset);
    }

    static String name(ByteBuffer bytes, int index) {
        byte[] four = new byte[4];
        bytes.get(index, four);
        return new String(four, StandardCharsets.ISO_8859_1);
    }
}
