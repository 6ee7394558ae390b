package evenblade.judge.comparison;

import evenblade.machine.installation.Shaft;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.OrderReading;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The figures of one dwell that a basis allows to compare.
 *
 * @param entries by figure, in the order of the order table, the unevenness index last
 */
record DwellFigures(Map<Figure, Entry> entries) {
    /**
     * No line repeats better from run to run than to this share of the strongest line beside it (standard
     * deviation): a sensor feels a little of every direction, a seat is never quite the same. Common
     * practice, no source.
     */
    private static final double STEADY_SHARE = 0.003;

    private static final double NORMAL_95 = 1.959963984540054; // Φ⁻¹(0.975)

    /**
     * A figure's value.
     *
     * @param value what was measured
     * @param sharedWith names of the lines that it can't be separated from
     */
    record Entry(ComparedValue value, List<String> sharedWith) {
        Entry {
            sharedWith = sharedWith.stream().sorted().toList();
        }
    }

    DwellFigures {
        entries = Collections.unmodifiableMap(new LinkedHashMap<>(entries));
    }

    static DwellFigures of(DwellOrders dwell, Basis basis) {
        Map<Figure, Entry> entries = new LinkedHashMap<>();
        Optional<ComparedValue.Known> bladePass = basis == Basis.GAIN_FREE ? bladePass(dwell) : Optional.empty();
        double wobble = NORMAL_95 * STEADY_SHARE * strongest(dwell);
        for (OrderReading reading : dwell.readings()) {
            ComparedValue.of(reading.level()).map(v -> v.unsteadyBy(wobble)).ifPresent(value -> {
                if (basis == Basis.ABSOLUTE) {
                    entries.put(Figure.amplitude(reading.line()), new Entry(value, reading.inseparableNames()));
                } else if (bladePass.isPresent() && propellerOnly(reading)) {
                    entries.put(
                            Figure.toBladePass(reading.line()),
                            new Entry(ComparedValue.ratio(value, bladePass.get()), List.of()));
                }
            });
        }
        dwell.unevenness()
                .flatMap(ComparedValue::of)
                .map(v -> v.unsteadyBy(NORMAL_95 * STEADY_SHARE))
                .ifPresent(value -> entries.put(Figure.UNEVENNESS, new Entry(value, List.of())));
        return new DwellFigures(entries);
    }

    private static double strongest(DwellOrders dwell) {
        return dwell.readings().stream()
                .flatMap(r -> ComparedValue.of(r.level()).stream())
                .filter(v -> v instanceof ComparedValue.Known)
                .mapToDouble(ComparedValue::size)
                .max()
                .orElse(0);
    }

    /** A propeller order, blade pass itself left out, that no engine line falls on. */
    private static boolean propellerOnly(OrderReading reading) {
        return reading.line().of() == Shaft.PROPELLER
                && !reading.line().bladePass()
                && reading.inseparableFrom().isEmpty();
    }

    private static Optional<ComparedValue.Known> bladePass(DwellOrders dwell) {
        return dwell.readings().stream()
                .filter(r -> r.line().bladePass() && r.inseparableFrom().isEmpty())
                .flatMap(r -> ComparedValue.of(r.level()).stream())
                .flatMap(v -> v instanceof ComparedValue.Known known ? Stream.of(known) : Stream.empty())
                .findFirst();
    }
}
