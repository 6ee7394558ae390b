package evenblade.face.app;

import evenblade.base.problem.Warning;
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
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** What a reader of measured orders has to know beside the figures. */
final class AnalysisWarnings {
    private AnalysisWarnings() {}

    static List<Warning> of(Recording recording, List<ChannelOrders> channels) {
        List<Warning> warnings = new ArrayList<>();
        if (recording.source().lossy()) {
            warnings.add(new Warning(
                    "lossy-file",
                    "the file's kind throws away part of the signal; its amplitudes are not for comparison"));
        }
        if (channels.stream().anyMatch(channel -> channel.unit() == SignalUnit.FULL_SCALE)) {
            warnings.add(new Warning(
                    "uncalibrated",
                    "amplitudes are shares of the recorder's full scale; only ratios within this recording mean"
                            + " something"));
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
            warnings.add(new Warning(
                    "beyond-range",
                    String.format(
                            Locale.ROOT,
                            "nothing above %.1f Hz can be measured here; not measured: %s",
                            Math.min(
                                    recording.usableUpToHz(),
                                    Recording.USABLE_SHARE_OF_RATE
                                            * recording.time().rateHz()),
                            beyond.entrySet().stream()
                                    .map(line -> line.getKey() + inSome(line.getValue(), dwells.size()))
                                    .collect(Collectors.joining(", ")))));
        }
        if (!close.isEmpty()) {
            warnings.add(new Warning(
                    "lines-too-close",
                    "too close to be told apart in a dwell of this length: " + String.join(", ", close)
                            + "; a longer dwell splits them"));
        }
        return warnings;
    }

    /** A line that climbs out of range is measured in the slower dwells. */
    private static String inSome(int beyond, int dwells) {
        return beyond == dwells ? "" : " in " + beyond + " of " + dwells + " dwells";
    }

    /** Whether it merges with a line that a longer dwell would split from it. */
    private static boolean isCloseToAnother(OrderReading reading, DwellOrders dwell) {
        return reading.inseparableFrom().stream().anyMatch(name -> dwell.readings().stream()
                .filter(other -> other.line().name().equals(name))
                .anyMatch(other -> !OrderTable.coincide(other.line(), reading.line())));
    }
}
