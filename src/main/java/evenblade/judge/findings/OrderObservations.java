package evenblade.judge.findings;

import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.Shaft;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;

/**
 * Lines seen in runs whose speed is confirmed, to be narrowed down by questions.
 *
 * @param all in the order of runs, channels, dwells and the order table
 */
record OrderObservations(List<OrderObservation> all) {
    private static final double SAME_ORDER = 1e-9;

    OrderObservations {
        all = List.copyOf(all);
    }

    static OrderObservations of(List<RunEvidence> runs) {
        List<OrderObservation> all = new ArrayList<>();
        for (RunEvidence run : runs) {
            if (run.numbers().confirmed()) {
                run.numbers().channels().forEach(channel -> add(run, channel, all));
            }
        }
        return new OrderObservations(all);
    }

    private static void add(RunEvidence run, ChannelOrders channel, List<OrderObservation> all) {
        for (int d = 0; d < channel.dwells().size(); d++) {
            DwellOrders dwell = channel.dwells().get(d);
            double rpm = dwell.dwell().propellerRpm() * run.numbers().ratio();
            for (OrderReading reading : dwell.readings()) {
                if (reading.level() instanceof Level.Measured level) {
                    all.add(new OrderObservation(
                            run.ref(),
                            d,
                            rpm,
                            channel.channel(),
                            run.direction(channel.channel()),
                            channel.unit(),
                            run.microphone(),
                            reading,
                            level.amplitude(),
                            level.ciLow(),
                            level.ciHigh()));
                }
            }
        }
    }

    OrderObservations only(Predicate<OrderObservation> wanted) {
        return new OrderObservations(all.stream().filter(wanted).toList());
    }

    OrderObservations of(Shaft shaft, double order) {
        return only(s ->
                s.reading().line().of() == shaft && Math.abs(s.reading().line().order() - order) < SAME_ORDER);
    }

    OrderObservations of(OrderLine.Role role) {
        return only(s -> s.reading().line().role() == role);
    }

    OrderObservations alone() {
        return only(OrderObservation::alone);
    }

    OrderObservations detected() {
        return only(OrderObservation::detected);
    }

    OrderObservations along() {
        return only(s -> s.direction() == Direction.ALONG);
    }

    OrderObservations acrossShaft() {
        return only(s -> s.direction().acrossShaft());
    }

    OrderObservations in(Direction direction) {
        return only(s -> s.direction() == direction);
    }

    OrderObservations atMomentOf(OrderObservation other) {
        return only(s -> s.sameMoment(other));
    }

    boolean isEmpty() {
        return all.isEmpty();
    }

    /** Whether every run has known directions along and across the shaft. */
    boolean directionsKnown() {
        return !along().isEmpty() && !acrossShaft().isEmpty();
    }

    /** The largest by amplitude. */
    Optional<OrderObservation> strongest() {
        return all.stream().max(Comparator.comparingDouble(OrderObservation::amplitude));
    }

    /** The largest by velocity, of those whose scale is known. */
    Optional<OrderObservation> fastest() {
        return all.stream().filter(s -> s.velocityMmS().isPresent()).max(Comparator.comparingDouble(s -> s.velocityMmS()
                .getAsDouble()));
    }

    /** Root of the sum of squares of the strongest of each direction. */
    private double length() {
        double squares = 0;
        for (Direction direction : Direction.values()) {
            double amplitude =
                    in(direction).strongest().map(OrderObservation::amplitude).orElse(0.0);
            squares += amplitude * amplitude;
        }
        return Math.sqrt(squares);
    }

    /**
     * Median over the dwells of this amplitude over the other's, directions together as root of the sum of
     * squares; empty where no dwell has the other one detected.
     */
    OptionalDouble over(OrderObservations other) {
        List<Double> ratios = new ArrayList<>();
        List<OrderObservation> moments = new ArrayList<>();
        for (OrderObservation s : other.detected().all) {
            if (moments.stream().noneMatch(s::sameMoment)) {
                moments.add(s);
                ratios.add(atMomentOf(s).length() / other.atMomentOf(s).length());
            }
        }
        if (ratios.isEmpty() || isEmpty()) {
            return OptionalDouble.empty();
        }
        ratios.sort(null);
        int middle = ratios.size() / 2;
        return OptionalDouble.of(
                ratios.size() % 2 == 1 ? ratios.get(middle) : (ratios.get(middle - 1) + ratios.get(middle)) / 2);
    }
}
