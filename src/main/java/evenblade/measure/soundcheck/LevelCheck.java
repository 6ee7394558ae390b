package evenblade.measure.soundcheck;

import evenblade.base.problem.Warning;
import evenblade.input.recording.ChannelQuality;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Level, clipping and dead channels, from what was measured on every sample. Own limits. */
public final class LevelCheck {
    static final double HIGH_DB = -1;
    static final double LOW_DB = -40;
    static final double DEAD_BELOW_LOUDEST_DB = -60;
    private static final double CLIPPED_SHARE = 1e-5;

    private LevelCheck() {}

    /** @param quality of every channel, in shares of full scale */
    public static List<Warning> of(List<ChannelQuality> quality) {
        List<Warning> warnings = new ArrayList<>();
        double loudest = quality.stream().mapToDouble(ChannelQuality::rms).max().orElse(0);
        for (ChannelQuality each : quality) {
            if (each.rms() == 0 || decibel(each.rms() / loudest) < DEAD_BELOW_LOUDEST_DB) {
                warnings.add(dead(each));
            } else if (each.clippedShare() > CLIPPED_SHARE || decibel(each.peak()) > HIGH_DB) {
                warnings.add(text(
                        "level-too-high",
                        "channel '%s' peaks at %.1f dB: turn the input down until the bar stays below -6",
                        each));
            } else if (decibel(each.peak()) < LOW_DB) {
                warnings.add(text(
                        "level-low",
                        "channel '%s' peaks at %.1f dB only: turn the input up, or go nearer behind the arc",
                        each));
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
        return new Warning(
                "channel-dead", "channel '" + quality.channel() + "' carries nothing: is the sensor plugged in?");
    }

    private static Warning text(String code, String format, ChannelQuality quality) {
        return new Warning(code, String.format(Locale.ROOT, format, quality.channel(), decibel(quality.peak())));
    }

    private static double decibel(double share) {
        return 20 * Math.log10(Math.max(share, 1e-12));
    }
}
