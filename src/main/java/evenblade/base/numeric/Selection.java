package evenblade.base.numeric;

/** Finds one value of an order statistic without sorting all (C. A. R. Hoare's selection, 1961). */
public final class Selection {
    private Selection() {}

    /**
     * The value that would stand at {@code rank} were the first {@code size} values sorted; they are
     * shuffled by the search.
     *
     * @param values at least {@code size} of them
     * @param rank from 0 to {@code size} − 1
     */
    public static double ofRank(double[] values, int size, int rank) {
        int low = 0;
        int high = size - 1;
        while (low < high) {
            double pivot = values[(low + high) >>> 1];
            int i = low;
            int j = high;
            while (i <= j) {
                while (values[i] < pivot) {
                    i++;
                }
                while (values[j] > pivot) {
                    j--;
                }
                if (i <= j) {
                    double swapped = values[i];
                    values[i] = values[j];
                    values[j] = swapped;
                    i++;
                    j--;
                }
            }
            if (rank <= j) {
                high = j;
            } else if (rank >= i) {
                low = i;
            } else {
                break;
            }
        }
        return values[rank];
    }
}
