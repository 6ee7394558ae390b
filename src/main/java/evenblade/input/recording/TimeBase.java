package evenblade.input.recording;

/** When each sample of a recording was taken, in seconds from the recording's start. */
public sealed interface TimeBase {
    int size();

    /** Time of sample {@code index} in seconds. */
    double at(int index);

    /** Samples per second: exact for an even clock, the slope of a robust line for stamps. */
    double rateHz();

    /** True where samples are evenly spaced by construction. */
    boolean even();

    /** Copies {@code length} times from {@code from} on into the start of {@code into}. */
    default void copyTo(int from, double[] into, int length) {
        for (int i = 0; i < length; i++) {
            into[i] = at(from + i);
        }
    }

    /** Index of the first sample at or after that time; the size where there is none. */
    default int firstFrom(double seconds) {
        int low = 0;
        int high = size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (at(middle) < seconds) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** Some of its samples, at the same times. */
    TimeBase part(int from, int size);

    /** Seconds from the first sample to one step after the last. */
    default double durationS() {
        return size() == 0 ? 0 : at(size() - 1) - at(0) + 1 / rateHz();
    }

    /** An even clock that starts at {@code startS}. */
    record Even(double startS, double rateHz, int size) implements TimeBase {
        private static final double ROUNDING = 1e-6; // of a sample: far above rounding, far below what can be heard

        @Override
        public double at(int index) {
            return startS + index / rateHz;
        }

        @Override
        public boolean even() {
            return true;
        }

        /** A time that rounding puts just behind a sample still is that sample's. */
        @Override
        public int firstFrom(double seconds) {
            double position = (seconds - startS) * rateHz;
            return (int) Math.max(0, Math.min(size, Math.ceil(position - ROUNDING)));
        }

        @Override
        public TimeBase part(int from, int length) {
            return new Even(at(from), rateHz, length);
        }
    }

    /** One stamp per sample, rising, as a phone or logger wrote them. */
    record Stamped(Series seconds, double rateHz) implements TimeBase {
        @Override
        public int size() {
            return seconds.size();
        }

        @Override
        public double at(int index) {
            return seconds.at(index);
        }

        @Override
        public boolean even() {
            return false;
        }

        @Override
        public TimeBase part(int from, int length) {
            return new Stamped(seconds.part(from, length), rateHz);
        }
    }
}
