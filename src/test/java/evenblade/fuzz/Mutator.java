package evenblade.fuzz;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

/** Changes a file a little: blindly, and where files of its kind keep their counts, lengths, numbers and names. */
final class Mutator {
    private static final List<String> WORDS = List.of(
            "NaN",
            "Infinity",
            "-1",
            "0",
            "1e308",
            "1e-320",
            "-0.0",
            "9223372036854775808",
            "null",
            "true",
            "[]",
            "{}",
            "\"\"",
            "\"=x\"",
            "\u001b[31m",
            "\u0000",
            "\uFEFF",
            ";",
            ",",
            "\t",
            "\n",
            "\r\n",
            "\"",
            "''",
            "e1",
            "e999",
            "+999999999-01-01T00:00:00Z",
            "1/0 in",
            "1e300 mm",
            "\\ud800",
            "..",
            "recordings/x",
            "A",
            "%s",
            "1.2.3",
            "12:00:00",
            "1,5",
            "rpm",
            "EGT",
            "time (s)",
            "\u202e",
            "\uD800");

    private static final int[] NUMBERS = {0, 1, -1, 2, 255, 256, 0x7FFF, 0x8000, 0xFFFF, 0x7FFFFFFF, 0x80000000, 3};

    private final Random chance;

    Mutator(Random chance) {
        this.chance = chance;
    }

    /** A changed copy; one to four changes. */
    byte[] of(byte[] original, byte[] other) {
        byte[] changed = original.clone();
        for (int left = 1 + chance.nextInt(4); left > 0; left--) {
            changed = change(changed, other);
        }
        return changed;
    }

    private byte[] change(byte[] bytes, byte[] other) {
        if (bytes.length == 0) {
            return new byte[] {(byte) chance.nextInt()};
        }
        return switch (chance.nextInt(9)) {
            case 0 -> bits(bytes);
            case 1 -> number(bytes, place(bytes), chance.nextBoolean());
            case 2 -> Arrays.copyOf(bytes, chance.nextInt(bytes.length + 1));
            case 3 -> without(bytes);
            case 4 -> twice(bytes);
            case 5 ->
                insert(
                        bytes,
                        place(bytes),
                        WORDS.get(chance.nextInt(WORDS.size())).getBytes(StandardCharsets.UTF_8));
            case 6 -> token(bytes);
            case 7 -> insert(bytes, place(bytes), part(other));
            default -> run(bytes);
        };
    }

    /** Headers matter most, so half of the places lie near the start. */
    private int place(byte[] bytes) {
        return chance.nextInt(chance.nextBoolean() ? Math.min(bytes.length, 128) : bytes.length);
    }

    private byte[] bits(byte[] bytes) {
        bytes[place(bytes)] ^= (byte) (1 << chance.nextInt(8));
        return bytes;
    }

    private byte[] number(byte[] bytes, int at, boolean little) {
        int value = NUMBERS[chance.nextInt(NUMBERS.length)];
        int width = 1 << chance.nextInt(3);
        for (int i = 0; i < width && at + i < bytes.length; i++) {
            bytes[at + i] = (byte) (value >>> 8 * (little ? i : width - 1 - i));
        }
        return bytes;
    }

    private byte[] without(byte[] bytes) {
        int from = place(bytes);
        int to = Math.min(bytes.length, from + 1 + chance.nextInt(64));
        byte[] left = new byte[bytes.length - (to - from)];
        System.arraycopy(bytes, 0, left, 0, from);
        System.arraycopy(bytes, to, left, from, bytes.length - to);
        return left;
    }

    private byte[] twice(byte[] bytes) {
        return insert(bytes, place(bytes), part(bytes));
    }

    private byte[] part(byte[] bytes) {
        if (bytes.length == 0) {
            return bytes;
        }
        int from = chance.nextInt(bytes.length);
        return Arrays.copyOfRange(bytes, from, Math.min(bytes.length, from + 1 + chance.nextInt(200)));
    }

    private static byte[] insert(byte[] bytes, int at, byte[] more) {
        byte[] all = new byte[bytes.length + more.length];
        System.arraycopy(bytes, 0, all, 0, at);
        System.arraycopy(more, 0, all, at, more.length);
        System.arraycopy(bytes, at, all, at + more.length, bytes.length - at);
        return all;
    }

    /** Puts another value in place of one between separators of text or JSON. */
    private byte[] token(byte[] bytes) {
        int from = place(bytes);
        while (from > 0 && !separator(bytes[from - 1])) {
            from--;
        }
        int to = from;
        while (to < bytes.length && !separator(bytes[to])) {
            to++;
        }
        byte[] left = new byte[bytes.length - (to - from)];
        System.arraycopy(bytes, 0, left, 0, from);
        System.arraycopy(bytes, to, left, from, bytes.length - to);
        return insert(left, from, WORDS.get(chance.nextInt(WORDS.size())).getBytes(StandardCharsets.UTF_8));
    }

    private static boolean separator(byte b) {
        return ",;:\t\n {}[]\"".indexOf(b) >= 0;
    }

    private byte[] run(byte[] bytes) {
        int from = place(bytes);
        Arrays.fill(bytes, from, Math.min(bytes.length, from + 1 + chance.nextInt(32)), (byte)
                (chance.nextBoolean() ? 0 : -1));
        return bytes;
    }
}
