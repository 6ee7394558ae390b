package evenblade.measure.orders;

import evenblade.machine.installation.OrderTable;
import evenblade.machine.installation.Shaft;
import java.util.List;
import java.util.Optional;

/**
 * How uneven the blades are, from propeller orders alone: √(Σ A_k², k no multiple of the blade count) /
 * √(Σ A_k², k a multiple). Its interval follows from the amplitudes' errors by the delta method on its
 * logarithm. Orders that an engine line falls on are left out; where they are all of one kind, there is
 * no index.
 */
final class UnevennessIndex {
    private UnevennessIndex() {}

    static Optional<DwellOrders.Unevenness> of(List<OrderReading> readings, OrderTable table) {
        Sum uneven = new Sum();
        Sum even = new Sum();
        boolean bladePassHeard = false;
        for (OrderReading reading : readings) {
            if (reading.line().of() != Shaft.PROPELLER
                    || !reading.inseparableFrom().isEmpty()
                    || !(reading.level() instanceof Level.Measured level)) {
                continue;
            }
            boolean bladePass = Math.round(reading.line().order()) % table.blades() == 0;
            (bladePass ? even : uneven).add(level);
            bladePassHeard |= bladePass && level.detected();
        }
        if (!bladePassHeard || uneven.lines == 0 || uneven.squares <= 0) {
            return Optional.empty();
        }
        double value = Math.sqrt(uneven.squares / even.squares);
        double logError = Math.hypot(uneven.logError(), even.logError());
        return Optional.of(new DwellOrders.Unevenness(
                // 95 of 100 lie within 1.96 standard errors.
                value, value * Math.exp(-1.96 * logError), value * Math.exp(1.96 * logError)));
    }

    private static final class Sum {
        private int lines;
        private double squares;
        private double variance;

        void add(Level.Measured level) {
            double square = level.amplitude() * level.amplitude();
            double sigma = level.standardError() * level.standardError();
            lines++;
            squares += square;
            variance += 4 * square * sigma + 4 * sigma * sigma;
        }

        /** Standard error of ½ ln of the sum. */
        double logError() {
            return Math.sqrt(variance) / (2 * squares);
        }
    }
}
