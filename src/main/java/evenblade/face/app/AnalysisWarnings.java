package evenblade.face.app;

import evenblade.base.fact.Code;
import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value;
import evenblade.base.fact.Value.Count;
import evenblade.base.fact.Value.Listed;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.units.SignalUnit;
import evenblade.input.intake.CodecChange;
import evenblade.input.recording.ChannelQuality;
import evenblade.input.recording.Recording;
import evenblade.machine.installation.OrderTable;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import evenblade.measure.speed.SpeedResult;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** What a reader of measured orders has to know beside the figures. */
final class AnalysisWarnings {
    /** Highest value over root mean square: 2.3 to 4.5 in sound runs of the rig, 9 and more with spikes or rattle. */
    private static final double SPIKE = 7;

    private static final double ONE_SPEED = 0.8; // of the recording in one dwell; ours

    private AnalysisWarnings() {}

    static List<Warning> of(Recording recording, List<ChannelOrders> channels) {
        List<Warning> warnings = new ArrayList<>();
        if (recording.source().lossy()) {
            warnings.add(Warning.of(WarningCode.LOSSY_FILE, Subject.Whole.RECORDING));
            CodecChange.of(recording.source().kind())
                    .ifPresent(change -> warnings.add(codec(recording.source().kind(), change)));
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

    /**
     * Channels with a highest value far beyond what lines and noise reach at one speed. Told of recordings of one speed
     * only: a loud moment of a run that is quiet else is no spike.
     */
    static List<Warning> spikes(List<ChannelQuality> quality, SpeedResult speed, List<ChannelOrders> channels) {
        boolean oneSpeed = speed.dwells().stream()
                .anyMatch(dwell -> dwell.durationS()
                        > ONE_SPEED * (speed.track().toS() - speed.track().fromS()));
        return quality.stream()
                .filter(each -> oneSpeed && each.peak() - Math.abs(each.mean()) > SPIKE * each.rms())
                .filter(each -> channels.stream().anyMatch(c -> c.channel().equals(each.channel())))
                .map(each -> Warning.of(
                        WarningCode.SENSOR_RATTLES, new Subject.Channel(each.channel()), new Quoted(each.channel())))
                .toList();
    }

    private static Warning codec(String kind, CodecChange change) {
        return Warning.of(
                WarningCode.CODEC_CHANGES_LINES,
                Subject.Whole.RECORDING,
                new Quoted(kind),
                Measure.SHARE.of(change.onceLow()),
                Measure.SHARE.of(change.onceHigh()),
                Measure.SHARE.of(change.bladePassLow()),
                Measure.SHARE.of(change.bladePassHigh()));
    }

    /** A line that climbs out of range is measured in the slower dwells. */
    private static Value beyond(String line, int beyond, int dwells) {
        return beyond == dwells
                ? new Quoted(line)
                : Fact.of(AnalysisFact.IN_SOME_DWELLS, new Quoted(line), new Count(beyond), new Count(dwells));
    }

    /** Whether it merges with a line that a longer dwell would split from it. */
    private static boolean isCloseToAnother(OrderReading reading, DwellOrders dwell) {
        return reading.inseparableFrom().stream().anyMatch(other -> !OrderTable.coincide(other, reading.line()));
    }

    /** What is said of analysed runs, beside warnings. */
    public enum AnalysisFact implements Code {
        RUN,
        RUN_WITH_ID,
        RECORDING_CHANGED,
        RECORDING_TAKEN_AS_IT_IS,
        IN_SOME_DWELLS
    }
}
