package evenblade.judge.comparison;

import evenblade.measure.orders.DwellOrders.Unevenness;
import evenblade.measure.orders.Level;
import java.util.Optional;

/** What one run says of one figure: a number with its error, or only that it lies below a limit. */
public sealed interface ComparedValue {
    /**
     * A figure that stands out of the noise.
     *
     * @param value above zero
     * @param reach half the width of the 95 % interval of its natural logarithm, from within this run
     */
    record Known(double value, double reach) implements ComparedValue {
        public Known {
            if (!(value > 0 && reach >= 0)) {
                throw new IllegalArgumentException("a figure of " + value + " with reach " + reach);
            }
        }

        @Override
        public double size() {
            return value;
        }

        @Override
        public ComparedValue times(double factor) {
            return new Known(value * factor, reach);
        }
    }

    /**
     * A figure that noise hides.
     *
     * @param limit it lies below this, at the upper end of the 95 % interval
     */
    record Below(double limit) implements ComparedValue {
        public Below {
            if (!(limit > 0)) {
                throw new IllegalArgumentException("below " + limit);
            }
        }

        @Override
        public double size() {
            return limit;
        }

        @Override
        public ComparedValue times(double factor) {
            return new Below(limit * factor);
        }
    }

    /** The number, or the limit. */
    double size();

    /** At another scale, above zero. */
    ComparedValue times(double factor);

    /** With an additive error more, given as half the width of its 95 % interval. */
    default ComparedValue unsteadyBy(double half) {
        return this instanceof Known known
                ? new Known(known.value(), Math.hypot(known.reach(), half / known.value()))
                : this;
    }

    /**
     * The value of a line; empty where it lies beyond the range or nothing at all can be said.
     *
     * <p>The reach is that of the delta method: half the width of the interval over the amplitude.
     */
    static Optional<ComparedValue> of(Level level) {
        if (!(level instanceof Level.Measured measured)) {
            return Optional.empty();
        }
        double half = (measured.ciHigh() - measured.ciLow()) / 2;
        if (measured.detected() && measured.amplitude() > half) {
            return Optional.of(new Known(measured.amplitude(), Math.max(0, half / measured.amplitude())));
        }
        boolean bounded = measured.ciHigh() > 0 && Double.isFinite(measured.ciHigh());
        return bounded ? Optional.of(new Below(measured.ciHigh())) : Optional.empty();
    }

    /** The value of an unevenness index, whose interval is even on the logarithm; empty where it has no end. */
    static Optional<ComparedValue> of(Unevenness index) {
        if (Double.isInfinite(index.ciHigh())) {
            return Optional.empty();
        }
        if (!(index.value() > 0 && index.ciLow() > 0)) {
            return index.ciHigh() > 0 ? Optional.of(new Below(index.ciHigh())) : Optional.empty();
        }
        double reach = Math.log(index.ciHigh() / index.ciLow()) / 2;
        return Optional.of(reach < 1 ? new Known(index.value(), reach) : new Below(index.ciHigh()));
    }

    /** One figure over another that is known: limits are carried to the safe side. */
    static ComparedValue ratio(ComparedValue above, Known below) {
        if (above instanceof Known known) {
            return new Known(known.value() / below.value(), Math.hypot(known.reach(), below.reach()));
        }
        return new Below(above.size() / below.value() * Math.exp(below.reach()));
    }
}
