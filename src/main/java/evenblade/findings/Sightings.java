package evenblade.findings;

import evenblade.installation.OrderLine;
import evenblade.installation.Shaft;
import evenblade.orders.ChannelOrders;
import evenblade.orders.DwellOrders;
import evenblade.orders.Level;
import evenblade.orders.OrderReading;
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
record Sightings(List<Sighting> all) {
    private static final double SAME_ORDER = 1e-9;

    Sightings {
        all = List.copyOf(all);
    }

    static Sightings of(List<RunEvidence> runs) {
        List<Sighting> all = new ArrayList<>();
        for (RunEvidence run : runs) {
            if (run.numbers().confirmed()) {
                run.numbers().channels().forEach(channel -> add(run, channel, all));
            }
        }
        return new Sightings(all);
    }

    private static void add(RunEvidence run, ChannelOrders channel, List<Sighting> all) {
        for (int d = 0; d < channel.dwells().size(); d++) {
            DwellOrders dwell = channel.dwells().get(d);
            double rpm = dwell.dwell().propellerRpm() * run.numbers().ratio();
            for (OrderReading reading : dwell.readings()) {
                if (reading.level() instanceof Level.Measured level) {
                    all.add(new Sighting(
                            run.name(),
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

    Sightings only(Predicate<Sighting> wanted) {
        return new Sightings(all.stream().filter(wanted).toList());
    }

    Sightings of(Shaft shaft, double order) {
        return only(s ->
                s.reading().line().of() == shaft && Math.abs(s.reading().line().order() - order) < SAME_ORDER);
    }

    Sightings of(OrderLine.Role role) {
        return only(s -> s.reading().line().role() == role);
    }

    Sightings alone() {
        return only(Sighting::alone);
    }

    Sightings detected() {
        return only(Sighting::detected);
    }

    Sightings along() {
        return only(s -> s.direction() == Direction.ALONG);
    }

    Sightings acrossShaft() {
        return only(s -> s.direction().acrossShaft());
    }

    Sightings in(Direction direction) {
        return only(s -> s.direction() == direction);
    }

    Sightings atMomentOf(Sighting other) {
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
    Optional<Sighting> strongest() {
        return all.stream().max(Comparator.comparingDouble(Sighting::amplitude));
    }

    /** The largest by velocity, of those whose scale is known. */
    Optional<Sighting> fastest() {
        return all.stream().filter(s -> s.velocityMmS().isPresent()).max(Comparator.comparingDouble(s -> s.velocityMmS()
                .getAsDouble()));
    }

    /** Root of the sum of squares of the strongest of each direction. */
    private double length() {
        double squares = 0;
        for (Direction direction : Direction.values()) {
            double amplitude =
                    in(direction).strongest().map(Sighting::amplitude).orElse(0.0);
            squares += amplitude * amplitude;
        }
        return Math.sqrt(squares);
    }

    /**
     * Median over the dwells of this amplitude over the other's, directions together as root of the sum of
     * squares; empty where no dwell has the other one detected.
     */
    OptionalDouble over(Sightings other) {
        List<Double> ratios = new ArrayList<>();
        List<Sighting> moments = new ArrayList<>();
        for (Sighting s : other.detected().all) {
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
