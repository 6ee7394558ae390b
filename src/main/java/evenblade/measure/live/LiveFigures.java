package evenblade.measure.live;

import evenblade.base.units.SignalUnit;
import evenblade.machine.installation.OrderLine;
import evenblade.measure.live.LiveListener.LiveNow;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import evenblade.measure.speed.Dwell;
import java.util.Optional;

/**
 * The figures to steer by, each with its error, none while it would be wrong: the speed of the latest second, and the
 * amplitudes of the first channel over all that was held since the throttle last moved.
 *
 * @param engineRpm empty while the speed isn't known or moves too fast
 * @param propellerRpm the same of the propeller
 * @param once propeller once-per-revolution; empty while unsteady
 * @param bladePass blade pass; empty while unsteady
 * @param unit of the two
 */
public record LiveFigures(
        Optional<Figure> engineRpm,
        Optional<Figure> propellerRpm,
        Optional<Figure> once,
        Optional<Figure> bladePass,
        SignalUnit unit) {
    /** Nothing to show. */
    public static final LiveFigures NONE = new LiveFigures(
            Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), SignalUnit.FULL_SCALE);

    /** A dwell that ends so near the end of a window is held still: the last short spectra fade out there. */
    private static final double AT_THE_END_S = 1;
    /** Quick speed and dwell are one up to here. */
    private static final double SAME = 0.02;
    /** A window that reaches so far beyond the last move has seen it, and doesn't call what was before held any more. */
    private static final double BEYOND_MOVE_S = 2;

    /**
     * A figure.
     *
     * @param value of a line that was detected
     * @param plusMinus half its 95 % interval
     * @param detected false where the line stays below {@code value}
     */
    public record Figure(double value, double plusMinus, boolean detected) {}

    /** The figures of the latest quick speed and the latest window. */
    public static LiveFigures of(double ratio, LiveNow now, Optional<LiveReading> window) {
        Optional<Figure> propeller =
                now.speed().map(speed -> new Figure(60 * speed.propellerHz(), 60 * speed.plusMinusHz(), true));
        Optional<Figure> engine = propeller.map(rpm -> new Figure(ratio * rpm.value(), ratio * rpm.plusMinus(), true));
        Optional<DwellOrders> held = window.filter(each -> seesLastMove(each, now))
                .flatMap(LiveFigures::held)
                .filter(each -> now.speed()
                        .filter(speed ->
                                Math.abs(speed.propellerHz() / each.dwell().propellerHz() - 1) < SAME)
                        .isPresent());
        return new LiveFigures(
                engine,
                propeller,
                held.flatMap(each -> figure(each, OrderLine.Role.UNEVEN_PROPELLER)),
                held.flatMap(each -> figure(each, OrderLine.Role.BLADE_PASS)),
                window.stream()
                        .flatMap(each -> each.channels().stream())
                        .findFirst()
                        .map(ChannelOrders::unit)
                        .orElse(SignalUnit.FULL_SCALE));
    }

    private static boolean seesLastMove(LiveReading window, LiveNow now) {
        return now.steadyFromS()
                .filter(from -> window.toS() >= from + BEYOND_MOVE_S)
                .isPresent();
    }

    /** The orders of the dwell that a window ends in; empty where it ends in none. */
    static Optional<DwellOrders> held(LiveReading window) {
        return window.channels().stream()
                .limit(1)
                .flatMap(channel -> channel.dwells().stream())
                .reduce((one, later) -> later)
                .filter(each -> each.dwell().toS() >= window.toS() - AT_THE_END_S);
    }

    /** The dwell that a window ends in. */
    static Optional<Dwell> heldToTheEnd(LiveReading window) {
        return held(window).map(DwellOrders::dwell);
    }

    /** Of the lowest line that plays a part. */
    static Optional<Figure> figure(DwellOrders dwell, OrderLine.Role role) {
        return dwell.readings().stream()
                .filter(each -> each.line().role() == role)
                .findFirst()
                .map(OrderReading::level)
                .filter(Level.Measured.class::isInstance)
                .map(Level.Measured.class::cast)
                .map(level -> level.detected()
                        ? new Figure(level.amplitude(), (level.ciHigh() - level.ciLow()) / 2, true)
                        : new Figure(level.ciHigh(), 0, false));
    }
}
