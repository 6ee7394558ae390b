package evenblade.measure.orders;

import evenblade.machine.installation.OrderLine;
import java.util.List;

/**
 * What one dwell says of one line.
 *
 * @param line the line
 * @param frequencyHz where it lies at the dwell's mean speed
 * @param level what was measured there, or why nothing could be
 * @param inseparableFrom the lines that it can't be separated from in this dwell
 */
public record OrderReading(OrderLine line, double frequencyHz, Level level, List<OrderLine> inseparableFrom) {
    public OrderReading {
        inseparableFrom = List.copyOf(inseparableFrom);
    }

    /** Names of the lines that it can't be separated from. */
    public List<String> inseparableNames() {
        return inseparableFrom.stream().map(OrderLine::name).toList();
    }

    /** Whether the line stands out of the noise. */
    public boolean detected() {
        return level instanceof Level.Measured measured && measured.detected();
    }
}
