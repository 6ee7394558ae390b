package evenblade.base.numeric;

import java.util.Arrays;
import org.hipparchus.util.KthSelector;

/** Finds one value of an order statistic without sorting all, by Hipparchus. */
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
        return new KthSelector().select(size == values.length ? values : Arrays.copyOf(values, size), null, rank);
    }
}
