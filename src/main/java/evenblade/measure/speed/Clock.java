package evenblade.measure.speed;

import evenblade.input.recording.TimeBase;

/** Finds samples by time. */
public final class Clock {
    private Clock() {}

    /** Index of the first sample at or after a time, between 0 and the number of samples. */
    public static int indexAt(TimeBase time, double seconds) {
        if (time.even()) {
            double position = (seconds - time.at(0)) * time.rateHz();
            return (int) Math.max(0, Math.min(time.size(), Math.ceil(position - 1e-6)));
        }
        int low = 0;
        int high = time.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (time.at(middle) < seconds) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
