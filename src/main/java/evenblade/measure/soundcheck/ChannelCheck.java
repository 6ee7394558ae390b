package evenblade.measure.soundcheck;

import evenblade.base.fact.Code;
import evenblade.base.fact.Fact;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.input.recording.Channel;
import evenblade.input.recording.Series;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Whether the channels are what they are said to be. */
public final class ChannelCheck {
    /** A signal that lies near one of two levels for this share of the time is a switch signal. */
    private static final double SWITCHED_SHARE = 0.8;

    private static final double NEAR_LEVEL = 0.15; // ours: noise on a pulse's levels stays within
    private static final double ALIKE = 0.99999; // ours: so well only one signal on two channels agrees

    private ChannelCheck() {}

    /**
     * Looks for channels that carry the same, a mark channel without pulses, and pulses where none are
     * expected.
     *
     * @param channels at one rate, 1 kHz or more
     * @param mark name of the channel with the once-per-revolution mark
     */
    public static List<Warning> of(List<Channel> channels, Optional<String> mark) {
        List<Warning> warnings = new ArrayList<>();
        for (int a = 0; a < channels.size(); a++) {
            for (int b = a + 1; b < channels.size(); b++) {
                if (correlation(channels.get(a).values(), channels.get(b).values()) > ALIKE) {
                    warnings.add(Warning.of(
                            WarningCode.CHANNELS_ALIKE,
                            new Subject.Channel(channels.get(b).name()),
                            new Quoted(channels.get(a).name()),
                            new Quoted(channels.get(b).name())));
                }
            }
        }
        mark.ifPresent(name -> markProblem(channels, name).ifPresent(warnings::add));
        return warnings;
    }

    private static Optional<Warning> markProblem(List<Channel> channels, String mark) {
        boolean pulses = channels.stream().anyMatch(c -> c.name().equals(mark) && pulsed(c.values()));
        if (pulses) {
            return Optional.empty();
        }
        Optional<Channel> other = channels.stream()
                .filter(c -> !c.name().equals(mark) && pulsed(c.values()))
                .findFirst();
        return Optional.of(other.map(channel -> Warning.of(
                        WarningCode.CHANNELS_SWAPPED,
                        new Subject.Channel(mark),
                        new Quoted(channel.name()),
                        new Quoted(mark)))
                .orElseGet(() -> Warning.of(
                        WarningCode.MARK_WITHOUT_PULSES,
                        new Subject.Channel(mark),
                        Fact.of(SoundFact.NO_PULSES, new Quoted(mark)))));
    }

    /** Whether a signal sits at two levels, like a switch; a tone does so for half the time at most. */
    static boolean pulsed(Series values) {
        float low = Float.POSITIVE_INFINITY;
        float high = Float.NEGATIVE_INFINITY;
        for (int i = 0; i < values.size(); i++) {
            low = Math.min(low, (float) values.at(i));
            high = Math.max(high, (float) values.at(i));
        }
        double margin = NEAR_LEVEL * (high - low);
        if (!(margin > 0)) {
            return false;
        }
        int nearLow = 0;
        int nearHigh = 0;
        for (int i = 0; i < values.size(); i++) {
            nearLow += values.at(i) < low + margin ? 1 : 0;
            nearHigh += values.at(i) > high - margin ? 1 : 0;
        }
        return nearLow > 0 && nearHigh > 0 && nearLow + nearHigh > SWITCHED_SHARE * values.size();
    }

    private static double correlation(Series a, Series b) {
        int n = Math.min(a.size(), b.size());
        double meanA = mean(a, n);
        double meanB = mean(b, n);
        double ab = 0;
        double aa = 0;
        double bb = 0;
        for (int i = 0; i < n; i++) {
            double x = a.at(i) - meanA;
            double y = b.at(i) - meanB;
            ab += x * y;
            aa += x * x;
            bb += y * y;
        }
        return aa > 0 && bb > 0 ? ab / Math.sqrt(aa * bb) : 0;
    }

    private static double mean(Series values, int n) {
        double sum = 0;
        for (int i = 0; i < n; i++) {
            sum += values.at(i);
        }
        return n == 0 ? 0 : sum / n;
    }

    /** What is said of a channel, beside warnings. */
    public enum SoundFact implements Code {
        NO_PULSES
    }
}
