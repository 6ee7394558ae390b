package evenblade.rig;

/** A quantity over time on an even grid from second 0; between the grid's points a straight line. */
public final class Series {
    private final double stepS;
    private final double[] values;

    Series(double stepS, double[] values) {
        this.stepS = stepS;
        this.values = values;
    }

    public double stepS() {
        return stepS;
    }

    public int size() {
        return values.length;
    }

    public double get(int index) {
        return values[index];
    }

    /** Value at a time; before the first and after the last point the end value holds. */
    public double at(double timeS) {
        double place = timeS / stepS;
        int left = (int) Math.floor(place);
        if (left < 0) {
            return values[0];
        }
        if (left >= values.length - 1) {
            return values[values.length - 1];
        }
        double part = place - left;
        return values[left] * (1 - part) + values[left + 1] * part;
    }

    public double mean(double fromS, double toS) {
        double sum = 0;
        int first = first(fromS);
        int last = last(toS);
        for (int i = first; i <= last; i++) {
            sum += values[i];
        }
        return sum / (last - first + 1);
    }

    public double min(double fromS, double toS) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = first(fromS); i <= last(toS); i++) {
            least = Math.min(least, values[i]);
        }
        return least;
    }

    public double max(double fromS, double toS) {
        double most = Double.NEGATIVE_INFINITY;
        for (int i = first(fromS); i <= last(toS); i++) {
            most = Math.max(most, values[i]);
        }
        return most;
    }

    private int first(double fromS) {
        return Math.max(0, Math.min(values.length - 1, (int) Math.ceil(fromS / stepS)));
    }

    private int last(double toS) {
        return Math.max(first(0), Math.min(values.length - 1, (int) Math.floor(toS / stepS)));
    }
}
