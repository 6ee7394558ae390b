package evenblade.measure.live;

import evenblade.base.units.SignalUnit;
import evenblade.input.recording.BlockSink;
import evenblade.input.recording.Channel;
import evenblade.input.recording.ChannelQuality;
import evenblade.input.recording.FileHash;
import evenblade.input.recording.QualityMeter;
import evenblade.input.recording.Recording;
import evenblade.input.recording.Source;
import evenblade.input.recording.TimeBase;
import evenblade.measure.signal.SlidingWindow;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The latest stretch of passing sound at a low rate, with the level and clipping of its last {@value #JUDGED_S} to
 * twice as many seconds, measured on the samples as they came: what was before somebody set the level right
 * doesn't count any more. Used by one thread.
 */
public final class LatestStretch implements BlockSink {
    private static final double JUDGED_S = 5; // what is said of the level is of now; ours
    private static final int CLIPPED_RUN = 2; // one sample at full scale may be chance
    private static final FileHash NO_HASH = FileHash.of("0".repeat(64));

    private final double rateHz;
    private final List<String> names;
    private final double quantum;
    private final SlidingWindow window;
    private List<QualityMeter> before = List.of();
    private List<QualityMeter> now;
    private long framesNow;

    /**
     * @param rateHz of the sound
     * @param names of its channels
     * @param quantum the smallest difference of two samples
     * @param keepUpToHz highest frequency to keep
     * @param seconds length of the stretch
     */
    public LatestStretch(double rateHz, List<String> names, double quantum, double keepUpToHz, double seconds) {
        this.rateHz = rateHz;
        this.names = List.copyOf(names);
        this.quantum = quantum;
        double usable = Math.min(keepUpToHz, Recording.USABLE_SHARE_OF_RATE * rateHz);
        this.window = SlidingWindow.plan(rateHz, usable, names.size(), seconds);
        this.now = meters();
    }

    private List<QualityMeter> meters() {
        return names.stream()
                .map(name -> new QualityMeter(name, quantum, CLIPPED_RUN))
                .toList();
    }

    @Override
    public void accept(float[] interleaved, int frames) {
        window.accept(interleaved, frames);
        if (framesNow >= JUDGED_S * rateHz) {
            before = now;
            now = meters();
            framesNow = 0;
        }
        framesNow += frames;
        for (int c = 0; c < names.size(); c++) {
            now.get(c).add(interleaved, c, names.size(), frames);
            if (!before.isEmpty()) {
                before.get(c).add(interleaved, c, names.size(), frames);
            }
        }
    }

    /** The stretch as a recording; empty before the first sample has come through. */
    public Optional<Recording> recording() {
        if (window.size() == 0) {
            return Optional.empty();
        }
        TimeBase time = new TimeBase.Even(window.fromS(), window.rateHz(), window.size());
        List<Channel> channels = new ArrayList<>();
        for (int c = 0; c < names.size(); c++) {
            channels.add(new Channel(names.get(c), SignalUnit.FULL_SCALE, window.latest(c, window.size())));
        }
        List<ChannelQuality> quality = (before.isEmpty() ? now : before)
                .stream().map(meter -> meter.quality(1, 0)).toList();
        Source source = new Source(Path.of("live"), NO_HASH, "live", false, rateHz, time.durationS(), names);
        return Optional.of(new Recording(source, time, channels, quality, Optional.empty(), List.of()));
    }
}
