package evenblade.face.app;

import evenblade.base.problem.BadInput;
import evenblade.input.capture.InputFormat;
import evenblade.input.recording.ChannelChoice;
import evenblade.machine.installation.Installation;
import evenblade.measure.live.LiveChain;
import evenblade.measure.live.LiveListener;
import evenblade.measure.live.WindowReader;
import java.nio.file.Path;
import java.util.Optional;

/** Sets up the live analysis as a recording of the same installation would be analysed. */
final class LiveSetup {
    private static final double LEAST_KEPT_HZ = 1000; // the orders of interest lie below about 1 kHz
    private static final double KEPT_MARGIN = 1.03; // ours: an engine runs a little past its highest speed

    private LiveSetup() {}

    /**
     * The name of the channel that a word means.
     *
     * @throws BadInput where the input has no such channel
     */
    static String channel(InputFormat format, String word) {
        return format.channelNames()
                .get(ChannelChoice.indexOf(format.channelNames(), word, BadInput.in("mark channel")));
    }

    /** Reads windows of what runs, anywhere in its range of speeds. */
    static WindowReader reader(Installation installation, Optional<String> markChannel) {
        SpeedRange range = SpeedRange.of(AnalysisRequest.of(Path.of("live"), installation));
        return new WindowReader(installation, range.expectation(), markChannel);
    }

    static LiveChain chain(
            InputFormat format, Installation installation, Optional<String> markChannel, LiveListener listener) {
        WindowReader reader = reader(installation, markChannel);
        double highest =
                ChosenChannels.highestOrder(installation) * reader.expectation().toHz() * KEPT_MARGIN;
        return new LiveChain(
                format.rateHz(), format.channelNames(), Math.max(LEAST_KEPT_HZ, highest), reader, listener);
    }
}
