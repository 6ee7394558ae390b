package evenblade.measure.live;

import evenblade.input.recording.Channel;
import evenblade.input.recording.ChannelQuality;
import evenblade.input.recording.Recording;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.OrderTable;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.SpeedAndOrders;
import evenblade.measure.signal.AveragedSpectrum;
import evenblade.measure.signal.Spectrum;
import evenblade.measure.speed.MarkSpeed;
import evenblade.measure.speed.SpeedFinder;
import evenblade.measure.speed.SpeedNow;
import evenblade.measure.speed.SpeedPrior;
import evenblade.measure.speed.SpeedResult;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Reads one window as a recording is read: comb or mark for the speed, then the orders of every dwell in it.
 *
 * @param installation what runs
 * @param expectation where its speed lies
 * @param markChannel name of the channel with the once-per-revolution mark
 */
public record WindowReader(Installation installation, SpeedPrior expectation, Optional<String> markChannel) {
    /** A shorter window is not looked at. */
    static final double LEAST_S = 3;

    private static final double SPECTRUM_SEGMENT_S = 2; // half a hertz fine; ours

    /** What a window shows; pure. */
    public LiveReading read(Recording window, double skippedS) {
        double fromS = window.time().at(0);
        double toS = fromS + window.time().durationS();
        List<Channel> signals = signals(window);
        Optional<Channel> mark = mark(window);
        Optional<Spectrum> spectrum = signals.stream().findFirst().map(c -> spectrum(window, c));
        if (signals.isEmpty() || toS - fromS < LEAST_S) {
            return new LiveReading(fromS, toS, ratio(), Optional.empty(), List.of(), spectrum, skippedS);
        }
        OrderTable table = installation.orders();
        SpeedResult found = mark.isPresent()
                ? MarkSpeed.find(window, mark.get(), signals, table, expectation)
                : SpeedFinder.find(window, signals, table, expectation);
        if (!found.confirmed()) {
            return new LiveReading(fromS, toS, ratio(), Optional.of(found), List.of(), spectrum, skippedS);
        }
        SpeedAndOrders both = SpeedAndOrders.measure(window, signals, table, found, expectation);
        List<ChannelOrders> orders = both.speed().confirmed() ? both.channels() : List.of();
        return new LiveReading(fromS, toS, ratio(), Optional.of(both.speed()), orders, spectrum, skippedS);
    }

    /** The speed that the last second shows; empty where it shows none. */
    Optional<SpeedNow> now(Recording latest) {
        Optional<Channel> mark = mark(latest);
        List<Channel> signals = signals(latest);
        if (mark.isPresent()) {
            return MarkSpeed.now(latest, mark.get());
        }
        return signals.isEmpty()
                ? Optional.empty()
                : SpeedFinder.now(latest, signals, installation.orders(), expectation);
    }

    private List<Channel> signals(Recording window) {
        return moving(window).stream()
                .filter(channel -> channel.axis() && !isMark(channel))
                .toList();
    }

    private Optional<Channel> mark(Recording window) {
        return moving(window).stream().filter(this::isMark).findFirst();
    }

    private boolean isMark(Channel channel) {
        return markChannel.filter(channel.name()::equals).isPresent();
    }

    private static List<Channel> moving(Recording window) {
        return IntStream.range(0, window.channels().size())
                .filter(c -> window.quality().get(c).rms() > 0)
                .mapToObj(window.channels()::get)
                .toList();
    }

    private double ratio() {
        return installation.reduction().ratio();
    }

    private static Spectrum spectrum(Recording window, Channel channel) {
        double rateHz = window.time().rateHz();
        int size = channel.values().size();
        int latest = (int) Math.min(size, Math.round(LiveChain.WINDOW_S * rateHz));
        return AveragedSpectrum.hann(SPECTRUM_SEGMENT_S, rateHz, Spectrum.Scaling.AMPLITUDE)
                .of(channel.values().part(size - latest, latest), rateHz);
    }

    /** The quality of a stretch of values, as far as the reader needs it. */
    static ChannelQuality quality(Channel channel) {
        double sum = 0;
        double squares = 0;
        double peak = 0;
        int size = channel.values().size();
        for (int i = 0; i < size; i++) {
            double value = channel.values().at(i);
            sum += value;
            squares += value * value;
            peak = Math.max(peak, Math.abs(value));
        }
        double mean = size == 0 ? 0 : sum / size;
        double variance = size == 0 ? 0 : Math.max(0, squares / size - mean * mean);
        return new ChannelQuality(channel.name(), 0, 1, peak, mean, Math.sqrt(variance));
    }
}
