package evenblade.measure.soundcheck;

import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.input.recording.ChannelQuality;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Level, clipping and dead channels, from what was measured on every sample. Own limits. */
public final class LevelCheck {
    static final double HIGH_DB = -1; // a tenth of full scale is left
    static final double LOW_DB = -40; // a hundredth of full scale
    static final double DEAD_BELOW_LOUDEST_DB = -60; // cross-talk of a cable with nothing on it
    private static final double CLIPPED_SHARE = 1e-5; // one sample in 100,000 may meet full scale by chance

    private LevelCheck() {}

    /**
     * @param quality of every channel, in shares of full scale
     * @param mark name of the channel with a mark, whose pulses are flat by nature
     */
    public static List<Warning> of(List<ChannelQuality> quality, Optional<String> mark) {
        List<Warning> warnings = new ArrayList<>();
        double loudest = quality.stream().mapToDouble(ChannelQuality::rms).max().orElse(0);
        for (ChannelQuality each : quality) {
            if (each.rms() == 0 || decibel(each.rms() / loudest) < DEAD_BELOW_LOUDEST_DB) {
                warnings.add(dead(each));
            } else if (each.clippedShare() > CLIPPED_SHARE
                    && each.peak() < ChannelQuality.AT_FULL_SCALE
                    && mark.filter(each.channel()::equals).isEmpty()) {
                warnings.add(peak(WarningCode.OVERDRIVEN_BELOW_FULL_SCALE, each));
            } else if (decibel(each.peak()) > HIGH_DB) {
                warnings.add(peak(WarningCode.LEVEL_TOO_HIGH, each));
            } else if (decibel(each.peak()) < LOW_DB) {
                warnings.add(peak(WarningCode.LEVEL_LOW, each));
            }
        }
        return warnings;
    }

    /** Channels that carry nothing, whatever their unit. */
    public static List<Warning> dead(List<ChannelQuality> quality) {
        return quality.stream()
                .filter(each -> each.rms() == 0)
                .map(LevelCheck::dead)
                .toList();
    }

    private static Warning dead(ChannelQuality quality) {
        return Warning.of(
                WarningCode.CHANNEL_DEAD, new Subject.Channel(quality.channel()), new Quoted(quality.channel()));
    }

    private static Warning peak(WarningCode code, ChannelQuality quality) {
        return Warning.of(
                code,
                new Subject.Channel(quality.channel()),
                new Quoted(quality.channel()),
                Measure.LEVEL.of(decibel(quality.peak())));
    }

    private static double decibel(double share) {
        // Digital silence has no level.
        return 20 * Math.log10(Math.max(share, 1e-12));
    }
}
