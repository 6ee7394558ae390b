package evenblade.measure.signal;

import java.util.Arrays;

/**
 * One stage of a decimation: a symmetric filter of which only every factor-th output is computed.
 *
 * <p>Output n is the filter centred on input n × factor, so nothing is delayed. Before the first and
 * after the last input the signal is taken as mirrored about that sample.
 *
 * <p>Inputs are sorted into {@code factor} rows (input i into row i mod factor). Within a row,
 * neighbouring outputs use neighbouring inputs, so each tap is one pass of multiply-and-add along
 * a row. Four such stretches of rows are copied to lanes that all start at index 0: only where every
 * array in a loop has the same index does the run-time compiler use vector instructions, and the
 * copying costs far less than it gains.
 */
final class DecimationStage implements FloatSink {
    /** Outputs per pass: few enough that the rows in use stay in the first-level cache. */
    private static final int PASS = 512;

    private static final int TAPS_PER_LOOP = 4; // as written out below

    private final int factor;
    private final int half;
    private final int reach;
    private final int rowLength;
    private final int[] tapOffsets;
    private final float[] tapValues;
    private final float[] rows;
    private final float[][] lanes = new float[TAPS_PER_LOOP][PASS];
    private final float[] outputs = new float[PASS];
    private final FloatSink next;

    /** Inputs in {@link #rows}, the mirrored ones before the first included. */
    private int filled;

    private long taken;
    private long given;

    DecimationStage(int factor, double[] taps, FloatSink next) {
        this.factor = factor;
        this.half = taps.length / 2;
        this.reach = taps.length;
        this.next = next;
        int columnsOfFilter = (taps.length + factor - 1) / factor;
        this.rowLength = PASS + columnsOfFilter;
        this.rows = new float[factor * rowLength];
        int used = 0;
        for (double tap : taps) {
            used += tap == 0 ? 0 : 1;
        }
        int padded = (used + TAPS_PER_LOOP - 1) / TAPS_PER_LOOP * TAPS_PER_LOOP;
        this.tapOffsets = new int[padded];
        this.tapValues = new float[padded];
        int i = 0;
        for (int j = 0; j < taps.length; j++) {
            if (taps[j] != 0) {
                tapOffsets[i] = j % factor * rowLength + j / factor;
                tapValues[i++] = (float) taps[j];
            }
        }
        this.filled = half;
    }

    @Override
    public void accept(float[] values, int count) {
        accept(values, 0, 1, count);
    }

    /** Takes {@code count} inputs: {@code values[from]}, {@code values[from + step]} and so on. */
    void accept(float[] values, int from, int step, int count) {
        for (int k = 0; k < count && taken + k <= half; k++) {
            int index = (int) (taken + k);
            if (index > 0) {
                rows[place(half - index)] = values[from + k * step];
            }
        }
        taken += count;
        push(values, from, step, count);
    }

    /** Gives the outputs whose whole filter has its inputs by now, without waiting for a full pass. */
    void giveReady() {
        while (filled >= reach) {
            compute(Math.min((filled - reach) / factor + 1, PASS));
        }
    }

    /** Gives the outputs whose filter reaches past the last input. */
    void finish() {
        if (taken == 0) {
            return;
        }
        int reach = (int) Math.min(taken, half + 1L);
        float[] last = new float[reach];
        for (int i = 0; i < reach; i++) {
            last[i] = rows[place(filled - reach + i)];
        }
        if (taken <= half) {
            for (int i = 1; i <= half; i++) {
                rows[place(half - i)] = last[mirrored(i, reach)];
            }
        }
        float[] beyond = new float[half];
        for (int i = 1; i <= half; i++) {
            beyond[i - 1] = last[mirrored(reach - 1 + i, reach)];
        }
        push(beyond, 0, 1, half);
        long wanted = (taken + factor - 1) / factor;
        while (given < wanted) {
            compute((int) Math.min(wanted - given, PASS));
        }
    }

    private void push(float[] values, int from, int step, int count) {
        int capacity = factor * rowLength;
        int done = 0;
        while (done < count) {
            int part = Math.min(capacity - filled, count - done);
            store(values, from + done * step, step, part);
            filled += part;
            done += part;
            if (filled == capacity) {
                compute(PASS);
            }
        }
    }

    private void store(float[] values, int from, int step, int count) {
        int wide = step * factor;
        for (int k = 0; k < Math.min(factor, count); k++) {
            int at = filled + k;
            int perRow = (count - k + factor - 1) / factor;
            spread(values, from + k * step, wide, rows, place(at), perRow);
        }
    }

    private static void spread(float[] from, int start, int step, float[] into, int at, int count) {
        for (int m = 0, s = start; m < count; m++, s += step) {
            into[at + m] = from[s];
        }
    }

    private void compute(int count) {
        Arrays.fill(outputs, 0, count, 0);
        for (int t = 0; t < tapValues.length; t += TAPS_PER_LOOP) {
            for (int i = 0; i < TAPS_PER_LOOP; i++) {
                System.arraycopy(rows, tapOffsets[t + i], lanes[i], 0, count);
            }
            addFourTaps(lanes, tapValues, t, outputs, count);
        }
        dropColumns(count);
        given += count;
        next.accept(outputs, count);
    }

    private static void addFourTaps(float[][] lanes, float[] taps, int t, float[] y, int count) {
        float[] x0 = lanes[0];
        float[] x1 = lanes[1];
        float[] x2 = lanes[2];
        float[] x3 = lanes[3];
        float h0 = taps[t];
        float h1 = taps[t + 1];
        float h2 = taps[t + 2];
        float h3 = taps[t + 3];
        for (int n = 0; n < count; n++) {
            y[n] += (h0 * x0[n] + h1 * x1[n]) + (h2 * x2[n] + h3 * x3[n]);
        }
    }

    /** Drops the first columns, whose outputs are computed. */
    private void dropColumns(int columns) {
        for (int row = 0; row < rows.length; row += rowLength) {
            System.arraycopy(rows, row + columns, rows, row, rowLength - columns);
        }
        filled -= columns * factor;
    }

    private int place(int index) {
        return index % factor * rowLength + index / factor;
    }

    /** Index {@code i} of a signal of {@code size} values that is mirrored about its ends for ever. */
    private static int mirrored(int i, int size) {
        if (size == 1) {
            return 0;
        }
        int period = 2 * (size - 1);
        int within = Math.floorMod(i, period);
        return within < size ? within : period - within;
    }
}
