package evenblade.measure.live;

import evenblade.base.units.SignalUnit;
import evenblade.input.recording.BlockSink;
import evenblade.input.recording.Channel;
import evenblade.input.recording.Recording;
import evenblade.input.recording.Source;
import evenblade.input.recording.TimeBase;
import evenblade.measure.signal.SlidingWindow;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Follows sound while it is recorded: takes blocks from the recording thread without holding it up,
 * and reads a window of {@value #WINDOW_S} s every {@value #HOP_S} s on a thread of its own.
 *
 * <p>From a sample to a reading that contains it takes at most one hop, the time to read a window, and some hundredths of a second for block and filter.
 */
public final class LiveChain implements BlockSink, AutoCloseable {
    /** Length of the window. */
    public static final double WINDOW_S = 8;
    /** Time between two readings. */
    public static final double HOP_S = 1;

    private static final int MOST_BLOCKS = 200; // some seconds of sound; older ones are dropped and counted
    private static final String NO_HASH = "0".repeat(64);

    private final double rateHz;
    private final List<String> names;
    private final double keepUpToHz;
    private final WindowReader reader;
    private final Consumer<LiveReading> listener;
    private final SoundBacklog backlog;
    private final Thread thread = new Thread(this::work, "live analysis");
    private SlidingWindow window;
    private long windowBegan;
    private long expected;
    private volatile boolean closed;

    /**
     * Starts to listen.
     *
     * @param rateHz of the sound
     * @param names of its channels
     * @param keepUpToHz highest frequency of interest
     * @param reader reads the windows
     * @param listener told of every reading, on the chain's thread
     */
    public LiveChain(
            double rateHz, List<String> names, double keepUpToHz, WindowReader reader, Consumer<LiveReading> listener) {
        this.rateHz = rateHz;
        this.names = List.copyOf(names);
        this.keepUpToHz = Math.min(keepUpToHz, Recording.USABLE_SHARE_OF_RATE * rateHz);
        this.reader = reader;
        this.listener = listener;
        this.backlog = new SoundBacklog(names.size(), MOST_BLOCKS);
        thread.setDaemon(true);
        thread.setPriority(Thread.MIN_PRIORITY);
        thread.start();
    }

    @Override
    public void accept(float[] interleaved, int frames) {
        backlog.accept(interleaved, frames);
    }

    private void work() {
        double readAtS = 0;
        try {
            while (!closed || !backlog.empty()) {
                Optional<SoundBacklog.Block> block = backlog.take(100);
                if (block.isEmpty()) {
                    continue;
                }
                take(block.get());
                double nowS = expected / rateHz;
                if (nowS - readAtS >= HOP_S && backlog.empty()) {
                    readAtS = nowS;
                    listener.accept(reader.read(recording(), backlog.skippedFrames() / rateHz));
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Sound that doesn't follow on what came before begins a new window. */
    private void take(SoundBacklog.Block block) {
        if (window == null || block.firstFrame != expected) {
            window = SlidingWindow.plan(rateHz, keepUpToHz, names.size(), WINDOW_S);
            windowBegan = block.firstFrame;
        }
        window.accept(block.samples, block.frames);
        expected = block.firstFrame + block.frames;
    }

    private Recording recording() {
        double fromS = windowBegan / rateHz + window.fromS();
        TimeBase time = new TimeBase.Even(fromS, window.rateHz(), window.size());
        List<Channel> channels = new ArrayList<>();
        for (int c = 0; c < names.size(); c++) {
            channels.add(new Channel(names.get(c), SignalUnit.FULL_SCALE, window.values(c)));
        }
        Source source = new Source(Path.of("live"), NO_HASH, "live", false, rateHz, time.durationS(), names);
        return new Recording(
                source,
                time,
                channels,
                channels.stream().map(WindowReader::quality).toList(),
                Optional.empty(),
                List.of());
    }

    /** Reads what is waiting and ends. */
    @Override
    public void close() {
        closed = true;
        try {
            thread.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
