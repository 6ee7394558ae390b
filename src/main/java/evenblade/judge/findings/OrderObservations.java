package evenblade.judge.findings;

import evenblade.judge.findings.RunEvidence.Direction;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.Shaft;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import java.util.ArrayList;
import java.util.Arrays;
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
    private static final double SAME_ORDER = 1e-9; // rounding of ratios

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

    /** What these carry of all lines seen: velocities where the largest of these lies. */
    Optional<Carried> carriedOf(OrderObservations everything) {
        return detected().fastest().map(most -> {
            double squares = everything.atMomentOf(most).detected().all().stream()
                    .filter(s -> s.channel().equals(most.channel()))
                    .mapToDouble(s -> Math.pow(s.velocityMmS().orElse(0), 2))
                    .sum();
            return new Carried(most.velocityMmS().getAsDouble(), Math.sqrt(squares));
        });
    }

    /** Root of the sum of squares of the strongest of each direction. */
    private double length() {
        double squares = 0;
        for (Direction direction : Direction.values()) {
            double amplitude = in(direction).largest();
            squares += amplitude * amplitude;
        }
        return Math.sqrt(squares);
    }

    /**
     * How alike two lines shake: cosine between their sizes along, level and upright, 1 where one is a multiple of the
     * other. Median over the dwells in which both stand out; empty where fewer than two directions are known.
     */
    OptionalDouble likeness(OrderObservations other) {
        List<Double> cosines = new ArrayList<>();
        List<OrderObservation> moments = new ArrayList<>();
        for (OrderObservation s : detected().all) {
            if (moments.stream().anyMatch(s::sameMoment)) {
                continue;
            }
            moments.add(s);
            OrderObservations then = other.atMomentOf(s);
            List<Direction> known = Arrays.stream(Direction.values())
                    .filter(d -> d != Direction.UNKNOWN && !then.in(d).isEmpty())
                    .toList();
            double mine = atMomentOf(s).length();
            double theirs = then.length();
            if (known.size() > 1 && mine > 0 && theirs > 0) {
                double product = known.stream()
                        .mapToDouble(
                                d -> atMomentOf(s).in(d).largest() * then.in(d).largest())
                        .sum();
                cosines.add(product / mine / theirs);
            }
        }
        return median(cosines);
    }

    double largest() {
        return strongest().map(OrderObservation::amplitude).orElse(0.0);
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
        return isEmpty() ? OptionalDouble.empty() : median(ratios);
    }

    /** Least over the dwells of this amplitude over the other's; 0 where no dwell has the other detected. */
    double leastOver(OrderObservations other) {
        return other.detected().all.stream()
                .filter(s -> other.atMomentOf(s).length() > 0)
                .mapToDouble(s -> atMomentOf(s).length() / other.atMomentOf(s).length())
                .min()
                .orElse(0);
    }

    private static OptionalDouble median(List<Double> values) {
        if (values.isEmpty()) {
            return OptionalDouble.empty();
        }
        values.sort(null);
        int middle = values.size() / 2;
        return OptionalDouble.of(
                values.size() % 2 == 1 ? values.get(middle) : (values.get(middle - 1) + values.get(middle)) / 2);
    }
}
