package evenblade.measure.soundcheck;

import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.units.SignalUnit;
import evenblade.input.recording.Channel;
import evenblade.input.recording.Recording;
import evenblade.measure.speed.SpeedResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** All checks of one take together. */
public final class SoundCheck {
    /** A cut above this takes part of propeller once-per-revolution of the usual engines. */
    private static final double HARMLESS_CORNER_HZ = 15;

    private SoundCheck() {}

    /**
     * Checks a take. Level, automatic gain and low cut are asked of sound only.
     *
     * @param take sound reduced to a rate of 2 kHz or so, or a sensor's values, all channels
     * @param quiet a take with the engine standing, same input, same rate
     * @param speed of the take, where it was found
     * @param mark name of the channel with the once-per-revolution mark
     */
    public static List<Warning> of(
            Recording take, Optional<Recording> quiet, Optional<SpeedResult> speed, Optional<String> mark) {
        double rateHz = take.time().rateHz();
        boolean sound = sound(take);
        List<Warning> warnings =
                new ArrayList<>(sound ? LevelCheck.of(take.quality(), mark) : LevelCheck.dead(take.quality()));
        warnings.addAll(ChannelCheck.of(take.channels(), mark));
        quiet.filter(still -> sound).ifPresent(still -> warnings.addAll(QuietCheck.of(still, Optional.empty(), mark)));
        for (int c = 0; c < take.channels().size(); c++) {
            Channel channel = take.channels().get(c);
            if (mark.isPresent() && mark.get().equals(channel.name())
                    || take.quality().get(c).rms() == 0) {
                continue;
            }
            int index = c;
            quiet.filter(still -> lacks(still, channel))
                    .ifPresent(still -> warnings.add(Warning.of(
                            WarningCode.QUIET_TAKE_UNLIKE,
                            new Subject.Channel(channel.name()),
                            new Quoted(channel.name()))));
            quiet.ifPresent(still -> still.channels().stream()
                    .filter(other -> other.name().equals(channel.name()))
                    .forEach(other -> warnings.addAll(HumCheck.of(
                            channel.name(),
                            other.values(),
                            still.time().rateHz(),
                            take.quality().get(index).rms()))));
            if (!sound) {
                continue;
            }
            speed.filter(SpeedResult::confirmed)
                    .flatMap(known -> GainCheck.of(GainCheck.moments(channel.values(), rateHz, known.track())))
                    .ifPresent(warnings::add);
            LowCut.cornerHz(
                            quiet.map(still -> values(still, channel))
                                    .orElse(channel)
                                    .values(),
                            rateHz)
                    .filter(corner -> corner > HARMLESS_CORNER_HZ)
                    .ifPresent(corner -> warnings.add(lowCut(channel.name(), corner)));
        }
        return warnings;
    }

    private static boolean lacks(Recording quiet, Channel channel) {
        return quiet.channels().stream().noneMatch(other -> other.name().equals(channel.name()));
    }

    /** Whether levels are shares of full scale, as a microphone's are; a sensor with a unit has no gain to set. */
    public static boolean sound(Recording take) {
        return take.channels().stream().allMatch(channel -> channel.unit().equals(SignalUnit.FULL_SCALE));
    }

    private static Channel values(Recording quiet, Channel channel) {
        return quiet.channels().stream()
                .filter(other -> other.name().equals(channel.name()))
                .findFirst()
                .orElse(channel);
    }

    private static Warning lowCut(String channel, double cornerHz) {
        return Warning.of(
                WarningCode.LOW_CUT, new Subject.Channel(channel), new Quoted(channel), Measure.FREQUENCY.of(cornerHz));
    }
}
