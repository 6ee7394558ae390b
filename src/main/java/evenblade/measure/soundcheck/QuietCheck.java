package evenblade.measure.soundcheck;

import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.input.recording.Channel;
import evenblade.input.recording.Recording;
import evenblade.measure.signal.AveragedSpectrum;
import evenblade.measure.signal.Spectrum;
import evenblade.measure.speed.SpeedResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Whether a quiet take is one: neither so loud as the engine will be, nor with a tone in it that isn't mains hum. An
 * engine that runs meanwhile would make every run look as if it hummed at blade pass. Own limits.
 */
public final class QuietCheck {
    /** Share of the power above {@link #FROM_HZ} that makes one line a tone; broad noise has a few hundredths there. */
    private static final double TONAL_SHARE = 0.4;
    /** Rumble and drift below are no tones. */
    private static final double FROM_HZ = 12;
    /** Places about a line that are the line, in bins: the main lobe of the window. */
    private static final int LOBE = 2;
    /** A multiple of the mains frequency within this is hum; the grid wanders by 0.2 %. */
    private static final double MAINS_WITHIN_HZ = 1.5;
    /** Softer tones, 70 dB down, are below what any run is held against. */
    private static final double LEAST_AMPLITUDE = 3e-4;

    private QuietCheck() {}

    /**
     * What forbids to take it for quiet; none where it is.
     *
     * @param quiet at a rate of 2 kHz or so, in shares of full scale
     * @param speed what the speed search says of it, where it is known what would run
     * @param mark name of a channel that carries no sound
     */
    public static List<Warning> of(Recording quiet, Optional<SpeedResult> speed, Optional<String> mark) {
        List<Warning> warnings = new ArrayList<>();
        boolean runs = speed.filter(SpeedResult::confirmed).isPresent();
        for (int c = 0; c < quiet.channels().size(); c++) {
            Channel channel = quiet.channels().get(c);
            if (mark.isPresent() && mark.get().equals(channel.name())) {
                continue;
            }
            // Digital silence has no level.
            double peakDb = 20 * Math.log10(Math.max(quiet.quality().get(c).peak(), 1e-9));
            if (peakDb > LevelAim.LOW_DB) {
                warnings.add(warning(WarningCode.QUIET_TAKE_LOUD, channel, Measure.LEVEL.of(peakDb)));
            }
            Optional<Double> tone = runs
                    ? speed.get().main().map(dwell -> dwell.propellerHz())
                    : tone(channel, quiet.time().rateHz());
            tone.ifPresent(
                    hz -> warnings.add(warning(WarningCode.QUIET_TAKE_TONAL, channel, Measure.FREQUENCY.of(hz))));
        }
        return warnings;
    }

    private static Warning warning(WarningCode code, Channel channel, Value value) {
        return Warning.of(code, new Subject.Channel(channel.name()), new Quoted(channel.name()), value);
    }

    private static Optional<Double> tone(Channel channel, double rateHz) {
        Spectrum spectrum =
                AveragedSpectrum.hann(1, rateHz, Spectrum.Scaling.AMPLITUDE).of(channel.values(), rateHz);
        double[] hz = spectrum.frequenciesHz().toArray();
        double[] power = IntStream.range(0, hz.length)
                .mapToDouble(i -> hz[i] < FROM_HZ || mains(hz[i])
                        ? 0
                        : spectrum.values().at(i) * spectrum.values().at(i))
                .toArray();
        int top = IntStream.range(0, power.length)
                .reduce((one, other) -> power[other] > power[one] ? other : one)
                .orElse(0);
        double all = 0;
        double line = 0;
        for (int i = 0; i < power.length; i++) {
            all += power[i];
            line += Math.abs(i - top) <= LOBE ? power[i] : 0;
        }
        return all > 0 && line > TONAL_SHARE * all && power[top] > LEAST_AMPLITUDE * LEAST_AMPLITUDE
                ? Optional.of(hz[top])
                : Optional.empty();
    }

    private static boolean mains(double hz) {
        return Math.min(Math.abs(hz - 50 * Math.rint(hz / 50)), Math.abs(hz - 60 * Math.rint(hz / 60)))
                < MAINS_WITHIN_HZ;
    }
}
