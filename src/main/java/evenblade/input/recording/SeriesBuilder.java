package evenblade.input.recording;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Collects sound of unknown length in single precision without ever copying what is already there.
 *
 * <p>A doubling array would for a moment need three times the memory of what it holds; this keeps
 * blocks of {@value #BLOCK} values and hands them over as they are. Not for use by several threads.
 */
public final class SeriesBuilder {
    static final int BLOCK_BITS = 16; // ours: 65,536 values a block
    static final int BLOCK = 1 << BLOCK_BITS; // a power of two, so that places are found by shifting

    private final List<float[]> blocks = new ArrayList<>();
    private long size;
    private boolean built;

    /** Values taken so far. */
    public long size() {
        return size;
    }

    /**
     * Appends {@code length} values from {@code from} on; they are copied.
     *
     * @throws IllegalStateException after {@link #build}
     */
    public void append(float[] values, int from, int length) {
        requireOpen();
        int done = 0;
        while (done < length) {
            int at = (int) (size & (BLOCK - 1));
            if (at == 0) {
                blocks.add(new float[BLOCK]);
            }
            int part = Math.min(BLOCK - at, length - done);
            System.arraycopy(values, from + done, blocks.get(blocks.size() - 1), at, part);
            size += part;
            done += part;
        }
    }

    /**
     * The series of everything taken, each value times {@code scale}. Ends the builder.
     *
     * @throws IllegalStateException where there are more than 2^31 − 1 values, or when called twice
     */
    public Series build(double scale) {
        requireOpen();
        built = true;
        if (size > Integer.MAX_VALUE) {
            throw new IllegalStateException(size + " values are more than a series holds (" + Integer.MAX_VALUE + ")");
        }
        int last = (int) (size & (BLOCK - 1));
        if (last != 0) {
            blocks.set(blocks.size() - 1, Arrays.copyOf(blocks.get(blocks.size() - 1), last));
        }
        if (scale != 1) {
            for (float[] block : blocks) {
                for (int i = 0; i < block.length; i++) {
                    block[i] = (float) (block[i] * scale);
                }
            }
        }
        return new Series.FloatBlocks(blocks.toArray(float[][]::new), (int) size);
    }

    private void requireOpen() {
        if (built) {
            throw new IllegalStateException("this series is built already");
        }
    }
}
