package evenblade.measure.orders;

import evenblade.base.fact.Warning;
import evenblade.input.recording.ChannelQuality;
import evenblade.input.recording.Source;
import evenblade.input.recording.StampQuality;
import evenblade.machine.installation.Installation;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedResult;
import java.util.List;
import java.util.Optional;

/**
 * The whole answer for one recording.
 *
 * @param source the file
 * @param installation what it was analysed for
 * @param speed one speed for all channels
 * @param channels the channel to look at first comes first
 * @param quality of every channel of the file
 * @param stamps quality of the time stamps, where the file has them
 * @param warnings from reading, speed and orders together
 */
public record RunOrders(
        Source source,
        Installation installation,
        SpeedResult speed,
        List<ChannelOrders> channels,
        List<ChannelQuality> quality,
        Optional<StampQuality> stamps,
        List<Warning> warnings) {
    /** Crystals of sound inputs are good to some 50 ppm (common practice, no source). */
    private static final double SOUND_CLOCK = 5e-5;
    /** Stamps of phones and loggers may be a per cent wrong at worst: 95 % within that. */
    private static final double STAMPS_CLOCK = 5e-3;

    public RunOrders {
        channels = List.copyOf(channels);
        quality = List.copyOf(quality);
        warnings = List.copyOf(warnings);
    }

    /** Engine revolutions per propeller revolution: as entered, corrected where the lines show it rounded. */
    public double ratio() {
        return installation.reduction().ratio() * (1 + speed.ratioCorrection());
    }

    /** Standard error of the clock that all frequencies hang on, as a share: 5·10⁻⁵ is 50 ppm. */
    public double clockShare() {
        return stamps.isPresent() ? STAMPS_CLOCK : SOUND_CLOCK;
    }

    /** Standard error of a dwell's mean speed with what the clock adds, hertz of the propeller. */
    public double standardErrorHz(Dwell dwell) {
        return Math.hypot(dwell.standardErrorHz(), clockShare() * dwell.propellerHz());
    }
}
