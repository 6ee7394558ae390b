package evenblade.input.audio;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * How one sample lies in bytes. Whole numbers are brought to a share of full scale by dividing by
 * 2^(bits-1) of the container, so the most negative storable value is exactly -1; floating-point
 * samples are shares of full scale already.
 *
 * <p>This is done here and not by the audio library's own converters, because those divide 16-bit
 * samples by 32767 and 24-bit samples by 8388607, which lets the lowest value pass -1 and makes one
 * signal read differently in two sample formats.
 */
public enum SampleCoding {
    UNSIGNED_8(8, false, ByteOrder.LITTLE_ENDIAN),
    SIGNED_8(8, false, ByteOrder.LITTLE_ENDIAN),
    SIGNED_16_LITTLE(16, false, ByteOrder.LITTLE_ENDIAN),
    SIGNED_16_BIG(16, false, ByteOrder.BIG_ENDIAN),
    SIGNED_24_LITTLE(24, false, ByteOrder.LITTLE_ENDIAN),
    SIGNED_24_BIG(24, false, ByteOrder.BIG_ENDIAN),
    SIGNED_32_LITTLE(32, false, ByteOrder.LITTLE_ENDIAN),
    SIGNED_32_BIG(32, false, ByteOrder.BIG_ENDIAN),
    FLOAT_32_LITTLE(32, true, ByteOrder.LITTLE_ENDIAN),
    FLOAT_32_BIG(32, true, ByteOrder.BIG_ENDIAN),
    FLOAT_64_LITTLE(64, true, ByteOrder.LITTLE_ENDIAN),
    FLOAT_64_BIG(64, true, ByteOrder.BIG_ENDIAN);

    private final int bits;
    private final boolean floating;
    private final ByteOrder order;

    SampleCoding(int bits, boolean floating, ByteOrder order) {
        this.bits = bits;
        this.floating = floating;
        this.order = order;
    }

    /** The signed whole-number coding of a container of 8, 16, 24 or 32 bits in a byte order. */
    public static SampleCoding signed(int bits, ByteOrder order) {
        for (SampleCoding coding : values()) {
            if (coding.bits == bits
                    && !coding.floating
                    && coding != UNSIGNED_8
                    && (bits == 8 || coding.order == order)) {
                return coding;
            }
        }
        throw new IllegalArgumentException("no coding of " + bits + " bit whole numbers, expected 8, 16, 24 or 32");
    }

    /** The floating-point coding of 32 or 64 bits in a byte order. */
    public static SampleCoding floating(int bits, ByteOrder order) {
        for (SampleCoding coding : values()) {
            if (coding.bits == bits && coding.floating && coding.order == order) {
                return coding;
            }
        }
        throw new IllegalArgumentException("no coding of " + bits + " bit floats, expected 32 or 64");
    }

    /** Bits of the container. */
    public int bits() {
        return bits;
    }

    public int bytes() {
        return bits / 8;
    }

    /** Whether samples are floating-point numbers, which may pass full scale or be no number at all. */
    public boolean floating() {
        return floating;
    }

    /**
     * Turns bytes into samples.
     *
     * @param from holds the samples from {@code offset} on
     * @param into filled from its start, as shares of full scale
     * @param samples how many
     */
    public void decode(byte[] from, int offset, float[] into, int samples) {
        switch (this) {
            case UNSIGNED_8 -> {
                for (int i = 0; i < samples; i++) {
                    into[i] = ((from[offset + i] & 0xff) - 128) * (1f / (1 << 7));
                }
            }
            case SIGNED_8 -> {
                for (int i = 0; i < samples; i++) {
                    into[i] = from[offset + i] * (1f / (1 << 7));
                }
            }
            case SIGNED_16_LITTLE -> {
                for (int i = 0, b = offset; i < samples; i++, b += 2) {
                    into[i] = (from[b] & 0xff | from[b + 1] << 8) * (1f / (1 << 15));
                }
            }
            case SIGNED_16_BIG -> {
                for (int i = 0, b = offset; i < samples; i++, b += 2) {
                    into[i] = (from[b + 1] & 0xff | from[b] << 8) * (1f / (1 << 15));
                }
            }
            case SIGNED_24_LITTLE -> {
                for (int i = 0, b = offset; i < samples; i++, b += 3) {
                    into[i] = (from[b] & 0xff | (from[b + 1] & 0xff) << 8 | from[b + 2] << 16) * (1f / (1 << 23));
                }
            }
            case SIGNED_24_BIG -> {
                for (int i = 0, b = offset; i < samples; i++, b += 3) {
                    into[i] = (from[b + 2] & 0xff | (from[b + 1] & 0xff) << 8 | from[b] << 16) * (1f / (1 << 23));
                }
            }
            case SIGNED_32_LITTLE, SIGNED_32_BIG -> {
                var whole = view(from, offset, samples).asIntBuffer();
                for (int i = 0; i < samples; i++) {
                    into[i] = whole.get(i) * (1f / (1L << 31));
                }
            }
            case FLOAT_32_LITTLE, FLOAT_32_BIG ->
                view(from, offset, samples).asFloatBuffer().get(into, 0, samples);
            case FLOAT_64_LITTLE, FLOAT_64_BIG -> {
                var wide = view(from, offset, samples).asDoubleBuffer();
                for (int i = 0; i < samples; i++) {
                    into[i] = (float) wide.get(i);
                }
            }
        }
    }

    private ByteBuffer view(byte[] from, int offset, int samples) {
        return ByteBuffer.wrap(from, offset, samples * bytes()).order(order);
    }
}
