package evenblade.input.intake;

import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value.Count;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Value.SignalValue;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import evenblade.base.units.SignalUnit;
import evenblade.input.recording.ChannelQuality;
import evenblade.input.recording.QualityMeter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What is held against every signal, sound or stamped: long enough, changing, not clipped, not stuck. */
final class SignalChecks {
    static final double LEAST_SECONDS = 1; // a shorter signal says nothing of offset or steadiness

    private static final double CLIPPED_SHARE = 1e-5; // one sample in 100,000 may meet full scale by chance
    /** A signal that spends more than this at its extremes is a switch signal, such as a mark. */
    private static final double SWITCHED_SHARE = 0.5;

    private static final double STUCK_SECONDS = 0.1; // several turns of a propeller without a change; ours
    private static final int STUCK_SAMPLES = 10; // coarse sensors repeat a value a few times; ours
    private static final double OFFSET_SHARE = 0.1; // a tenth of full scale costs 1 dB of room; ours
    /** From this rate on a clipped peak of an engine's vibration lasts several samples. */
    private static final double FAST_HZ = 4000;

    private SignalChecks() {}

    /** How many neighbouring samples at an extreme make a flat top. */
    static int flatRun(double rateHz) {
        return rateHz >= FAST_HZ ? 3 : 2;
    }

    static void requireLength(BadInput.Place place, double seconds) {
        if (seconds < LEAST_SECONDS) {
            throw place.found(
                    String.format(
                            Locale.ROOT,
                            seconds < 0.1 || seconds >= 0.95 ? "%.3f s of signal" : "%.1f s of signal",
                            seconds),
                    "at least 1 s");
        }
    }

    static void requireChange(BadInput.Place place, List<QualityMeter> meters) {
        if (meters.stream().allMatch(QualityMeter::constant)) {
            throw place.found(
                    meters.size() == 1
                            ? "a constant signal"
                            : "the same value throughout in every one of " + meters.size() + " channels",
                    "a signal that changes");
        }
    }

    static List<Warning> warnings(ChannelQuality quality, boolean constant, SignalUnit unit, double rateHz) {
        List<Warning> warnings = new ArrayList<>();
        Subject channel = new Subject.Channel(quality.channel());
        Quoted name = new Quoted(quality.channel());
        if (constant) {
            warnings.add(Warning.of(WarningCode.CONSTANT_SIGNAL, channel, name, new SignalValue(quality.mean(), unit)));
            return warnings;
        }
        if (quality.clippedShare() > CLIPPED_SHARE && quality.clippedShare() < SWITCHED_SHARE) {
            warnings.add(Warning.of(
                    WarningCode.CLIPPING,
                    channel,
                    name,
                    Measure.SHARE.of(quality.clippedShare()),
                    new SignalValue(quality.peak(), unit)));
        }
        double stuckS = quality.longestStuckRun() / rateHz;
        if (quality.longestStuckRun() >= STUCK_SAMPLES
                && stuckS >= STUCK_SECONDS
                && quality.clippedShare() < SWITCHED_SHARE) {
            warnings.add(Warning.of(
                    WarningCode.STUCK_VALUES,
                    channel,
                    name,
                    new Count(quality.longestStuckRun()),
                    Measure.TIME.of(stuckS)));
        }
        if (unit == SignalUnit.FULL_SCALE && Math.abs(quality.mean()) > OFFSET_SHARE) {
            warnings.add(Warning.of(WarningCode.DC_OFFSET, channel, name, new SignalValue(quality.mean(), unit)));
        }
        return warnings;
    }
}
