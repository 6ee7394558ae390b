package evenblade.face.app;

import evenblade.base.units.SignalUnit;
import evenblade.measure.orders.AngleAverage;
import evenblade.measure.signal.Spectrum;
import evenblade.measure.speed.Dwell;
import java.util.Optional;

/**
 * One channel of an analysed run in one dwell, ready to be drawn without the recording.
 *
 * @param channel its name
 * @param unit of its amplitudes
 * @param dwell the stretch shown; the whole recording, where empty
 * @param spectrum amplitude spectrum
 * @param usableUpToHz what lies above can't be told from what folds down
 * @param turn one mean turn of the propeller; empty where there is none or it wasn't asked for
 */
record ChannelView(
        String channel,
        SignalUnit unit,
        Optional<Dwell> dwell,
        Spectrum spectrum,
        double usableUpToHz,
        Optional<AngleAverage> turn) {}
