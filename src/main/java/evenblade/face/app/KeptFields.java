package evenblade.face.app;

import evenblade.input.recording.Series;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The fields that kept results are made of: one after the other, texts and lists with their length in
 * front, whether it is there in front of what may be missing.
 */
final class KeptFields {
    private KeptFields() {}

    /** Writes one thing. */
    interface Put<T> {
        void into(DataOutputStream out, T thing) throws IOException;
    }

    /** Reads one thing. */
    interface Get<T> {
        T from(DataInputStream in) throws IOException;
    }

    static void text(DataOutputStream out, String text) throws IOException {
        bytes(out, text.getBytes(StandardCharsets.UTF_8));
    }

    static String text(DataInputStream in) throws IOException {
        return new String(bytes(in), StandardCharsets.UTF_8);
    }

    static void bytes(DataOutputStream out, byte[] bytes) throws IOException {
        out.writeInt(bytes.length);
        out.write(bytes);
    }

    static byte[] bytes(DataInputStream in) throws IOException {
        byte[] bytes = new byte[length(in)];
        in.readFully(bytes);
        return bytes;
    }

    static <T> void list(DataOutputStream out, List<T> things, Put<T> put) throws IOException {
        out.writeInt(things.size());
        for (T thing : things) {
            put.into(out, thing);
        }
    }

    static <T> List<T> list(DataInputStream in, Get<T> get) throws IOException {
        int size = length(in);
        List<T> things = new ArrayList<>(size);
        for (int i = 0; i < size; i++) {
            things.add(get.from(in));
        }
        return things;
    }

    static <T> void optional(DataOutputStream out, Optional<T> thing, Put<T> put) throws IOException {
        out.writeBoolean(thing.isPresent());
        if (thing.isPresent()) {
            put.into(out, thing.get());
        }
    }

    static <T> Optional<T> optional(DataInputStream in, Get<T> get) throws IOException {
        return in.readBoolean() ? Optional.of(get.from(in)) : Optional.empty();
    }

    static void number(DataOutputStream out, OptionalDouble number) throws IOException {
        out.writeBoolean(number.isPresent());
        if (number.isPresent()) {
            out.writeDouble(number.getAsDouble());
        }
    }

    static OptionalDouble number(DataInputStream in) throws IOException {
        return in.readBoolean() ? OptionalDouble.of(in.readDouble()) : OptionalDouble.empty();
    }

    /** A curve, in single precision. */
    static void curve(DataOutputStream out, Series series) throws IOException {
        ByteBuffer buffer = ByteBuffer.allocate(series.size() * Float.BYTES);
        for (int i = 0; i < series.size(); i++) {
            buffer.putFloat((float) series.at(i));
        }
        bytes(out, buffer.array());
    }

    static Series curve(DataInputStream in) throws IOException {
        ByteBuffer buffer = ByteBuffer.wrap(bytes(in));
        float[] values = new float[buffer.remaining() / Float.BYTES];
        buffer.asFloatBuffer().get(values);
        return Series.ofFloats(values, values.length);
    }

    /** So many things follow, each of a byte or more. */
    private static int length(DataInputStream in) throws IOException {
        int length = in.readInt();
        if (length < 0 || length > in.available()) {
            throw new IOException("a length of " + length);
        }
        return length;
    }
}
