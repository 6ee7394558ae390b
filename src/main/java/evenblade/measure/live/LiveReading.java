package evenblade.measure.live;

import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.signal.Spectrum;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedResult;
import java.util.List;
import java.util.Optional;

/**
 * What the latest window shows.
 *
 * @param fromS start of the window, seconds into the recording
 * @param toS its end
 * @param ratio engine revolutions per propeller revolution, as entered
 * @param speed the speed in the window; empty while the window is too short, or where every channel is silent
 * @param channels the orders of each channel that isn't silent, in their order; without dwells where the speed didn't settle
 * @param spectrum of the first channel that isn't silent, for looking; empty where there is none
 * @param skippedS sound that the live view has skipped so far because it was behind; the file has it
 */
public record LiveReading(
        double fromS,
        double toS,
        double ratio,
        Optional<SpeedResult> speed,
        List<ChannelOrders> channels,
        Optional<Spectrum> spectrum,
        double skippedS) {
    public LiveReading {
        channels = List.copyOf(channels);
    }

    /** For how long the speed has been held at the end of the window; empty where it isn't. */
    public Optional<Double> heldS() {
        return LiveFigures.heldToTheEnd(this).map(Dwell::durationS);
    }

    /** The propeller's speed at the end of the window, where the signal bears it out. */
    public Optional<Double> propellerRpm() {
        return speed.filter(SpeedResult::confirmed)
                .map(s -> 60 * s.track().propellerHzAt(s.track().toS()));
    }

    /** Speed of the engine. */
    public Optional<Double> engineRpm() {
        return propellerRpm().map(rpm -> rpm * ratio);
    }
}
