package evenblade.face.app;

import evenblade.base.fact.Count;
import evenblade.base.fact.Fact;
import evenblade.base.fact.Listed;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Quoted;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.units.SignalUnit;
import evenblade.input.recording.Recording;
import evenblade.machine.installation.OrderTable;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** What a reader of measured orders has to know beside the figures. */
final class AnalysisWarnings {
    private AnalysisWarnings() {}

    static List<Warning> of(Recording recording, List<ChannelOrders> channels) {
        List<Warning> warnings = new ArrayList<>();
        if (recording.source().lossy()) {
            warnings.add(Warning.of(WarningCode.LOSSY_FILE, Subject.Whole.RECORDING));
        }
        if (channels.stream().anyMatch(channel -> channel.unit() == SignalUnit.FULL_SCALE)) {
            warnings.add(Warning.of(WarningCode.UNCALIBRATED, Subject.Whole.RECORDING));
        }
        List<DwellOrders> dwells =
                channels.isEmpty() ? List.of() : channels.get(0).dwells();
        Map<String, Integer> beyond = new LinkedHashMap<>();
        Set<String> close = new LinkedHashSet<>();
        for (DwellOrders dwell : dwells) {
            for (OrderReading reading : dwell.readings()) {
                if (reading.level() instanceof Level.BeyondRange) {
                    beyond.merge(reading.line().name(), 1, Integer::sum);
                } else if (isCloseToAnother(reading, dwell)) {
                    close.add(reading.line().name());
                }
            }
        }
        if (!beyond.isEmpty()) {
            warnings.add(Warning.of(
                    WarningCode.BEYOND_RANGE,
                    Subject.Whole.RECORDING,
                    Measure.FREQUENCY.of(Math.min(
                            recording.usableUpToHz(),
                            Recording.USABLE_SHARE_OF_RATE * recording.time().rateHz())),
                    new Listed(beyond.entrySet().stream()
                            .<Value>map(line -> beyond(line.getKey(), line.getValue(), dwells.size()))
                            .toList())));
        }
        if (!close.isEmpty()) {
            warnings.add(Warning.of(
                    WarningCode.LINES_TOO_CLOSE, Subject.Whole.RECORDING, Listed.quoted(List.copyOf(close))));
        }
        return warnings;
    }

    /** A line that climbs out of range is measured in the slower dwells. */
    private static Value beyond(String line, int beyond, int dwells) {
        return beyond == dwells
                ? new Quoted(line)
                : Fact.of(AnalysisFact.IN_SOME_DWELLS, new Quoted(line), new Count(beyond), new Count(dwells));
    }

    /** Whether it merges with a line that a longer dwell would split from it. */
    private static boolean isCloseToAnother(OrderReading reading, DwellOrders dwell) {
        return reading.inseparableFrom().stream().anyMatch(name -> dwell.readings().stream()
                .filter(other -> other.line().name().equals(name))
                .anyMatch(other -> !OrderTable.coincide(other.line(), reading.line())));
    }
}
