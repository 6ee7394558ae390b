package evenblade.input.recording;

/** An immutable run of numbers; long sound is kept in single precision, everything else in double. */
public sealed interface Series {
    int size();

    double at(int index);

    /** Copies {@code length} values from {@code from} on into the start of {@code into}. */
    void copyTo(int from, double[] into, int length);

    /** All values in a fresh array. */
    default double[] toArray() {
        double[] all = new double[size()];
        copyTo(0, all, all.length);
        return all;
    }

    /** A stretch of this series, looked at in place. */
    default Series part(int from, int size) {
        return new Part(this, from, size);
    }

    /** A series of the given values; the array is copied. */
    static Series of(double... values) {
        return new Doubles(values.clone());
    }

    /** A series of the first {@code size} of the given values in single precision; the array is copied. */
    static Series ofFloats(float[] values, int size) {
        return new Floats(java.util.Arrays.copyOf(values, size));
    }

    /** Double precision. */
    final class Doubles implements Series {
        private final double[] values;

        private Doubles(double[] values) {
            this.values = values;
        }

        @Override
        public int size() {
            return values.length;
        }

        @Override
        public double at(int index) {
            return values[index];
        }

        @Override
        public void copyTo(int from, double[] into, int length) {
            System.arraycopy(values, from, into, 0, length);
        }
    }

    /** Single precision, for long sound. */
    final class Floats implements Series {
        private final float[] values;

        private Floats(float[] values) {
            this.values = values;
        }

        @Override
        public int size() {
            return values.length;
        }

        @Override
        public double at(int index) {
            return values[index];
        }

        @Override
        public void copyTo(int from, double[] into, int length) {
            for (int i = 0; i < length; i++) {
                into[i] = values[from + i];
            }
        }
    }

    /** Single precision in equal blocks, the last one shorter; made by {@link SeriesBuilder}. */
    final class FloatBlocks implements Series {
        private final float[][] blocks;
        private final int size;

        FloatBlocks(float[][] blocks, int size) {
            this.blocks = blocks;
            this.size = size;
        }

        @Override
        public int size() {
            return size;
        }

        @Override
        public double at(int index) {
            return blocks[index >> SeriesBuilder.BLOCK_BITS][index & (SeriesBuilder.BLOCK - 1)];
        }

        @Override
        public void copyTo(int from, double[] into, int length) {
            int done = 0;
            while (done < length) {
                float[] block = blocks[(from + done) >> SeriesBuilder.BLOCK_BITS];
                int at = (from + done) & (SeriesBuilder.BLOCK - 1);
                int part = Math.min(block.length - at, length - done);
                for (int i = 0; i < part; i++) {
                    into[done + i] = block[at + i];
                }
                done += part;
            }
        }
    }

    /** A stretch of another series. */
    final class Part implements Series {
        private final Series whole;
        private final int first;
        private final int size;

        private Part(Series whole, int first, int size) {
            if (first < 0 || size < 0 || first + size > whole.size()) {
                throw new IllegalArgumentException(
                        "no stretch of " + size + " values from " + first + " in " + whole.size());
            }
            this.whole = whole;
            this.first = first;
            this.size = size;
        }

        @Override
        public int size() {
            return size;
        }

        @Override
        public double at(int index) {
            return whole.at(first + index);
        }

        @Override
        public void copyTo(int from, double[] into, int length) {
            whole.copyTo(first + from, into, length);
        }
    }
}
