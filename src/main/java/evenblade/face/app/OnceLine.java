package evenblade.face.app;

import evenblade.judge.balance.TrialConditions.DwellReading;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.Shaft;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Propeller 1× of one dwell as balancing takes it.
 *
 * @param amplitude peak value in the channel's unit
 * @param standardError of the amplitude
 * @param phaseDeg how far the line is behind the mark: it grows with an angle that is counted against the rotation
 */
record OnceLine(double amplitude, double standardError, OptionalDouble phaseDeg) {
    /** An unexplained line this near to ½ of the propeller's speed, as a share of it, is taken for ½×. */
    private static final double SAME_ORDER = 0.004;

    private static final double HALF = 0.5; // the order of a blade that sits loose, or of a four-stroke's cycle

    /** Empty where the file can't show the line. */
    static Optional<OnceLine> of(DwellOrders dwell) {
        return dwell.propellerOnce()
                .flatMap(reading -> reading.level() instanceof Level.Measured level
                        ? Optional.of(new OnceLine(level.amplitude(), level.standardError(), behind(level.phaseDeg())))
                        : Optional.empty());
    }

    /** x = A·cos(ωt + φ) leads the mark by φ, so it is −φ behind it. */
    private static OptionalDouble behind(OptionalDouble ahead) {
        return ahead.isPresent() ? OptionalDouble.of((360 - ahead.getAsDouble()) % 360) : ahead;
    }

    DwellReading dwell(DwellOrders of) {
        return new DwellReading(of.dwell().propellerRpm(), amplitude, standardError, phaseDeg);
    }

    /** The order of the crank line that can't be told from it. */
    static OptionalDouble sharedCrankOrder(DwellOrders dwell) {
        Optional<OrderReading> once = dwell.propellerOnce();
        return dwell.readings().stream()
                .map(OrderReading::line)
                .filter(line -> line.of() == Shaft.CRANK
                        && once.filter(o -> o.inseparableFrom().contains(line)).isPresent())
                .mapToDouble(OrderLine::order)
                .findFirst();
    }

    /** ½× over 1×, where a line that no order explains is there. */
    static OptionalDouble halfOrderShare(DwellOrders dwell) {
        Optional<OnceLine> once = of(dwell);
        if (once.isEmpty() || once.get().amplitude() == 0) {
            return OptionalDouble.empty();
        }
        return dwell.unexplained().stream()
                .filter(line -> Math.abs(line.propellerOrder() - HALF) <= SAME_ORDER * HALF)
                .mapToDouble(line -> line.amplitude() / once.get().amplitude())
                .max();
    }
}
