package evenblade.machine.plan;

import evenblade.machine.installation.OrderLine;
import java.util.List;
import java.util.Optional;

/**
 * Where one line lies at a dwell.
 *
 * @param line the line
 * @param frequencyHz its frequency
 * @param fold where a sensor too slow for it would show it; empty where it is seen as it is
 */
public record PlannedLine(OrderLine line, double frequencyHz, Optional<Fold> fold) {
    /**
     * Where a line beyond range turns up.
     *
     * @param toHz the false frequency, |f − round(f/fs)·fs|
     * @param near names of lines in range that it would be taken for
     */
    public record Fold(double toHz, List<String> near) {
        public Fold {
            near = List.copyOf(near);
        }
    }
}
