package evenblade.measure.live;

import evenblade.base.units.SignalUnit;
import evenblade.input.recording.BlockSink;
import evenblade.input.recording.Channel;
import evenblade.input.recording.FileHash;
import evenblade.input.recording.Recording;
import evenblade.input.recording.Source;
import evenblade.input.recording.TimeBase;
import evenblade.measure.signal.SlidingWindow;
import evenblade.measure.speed.SpeedNow;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.SynchronousQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;

/**
 * Follows sound while it is recorded: takes blocks from the recording thread without holding it up. One thread of its
 * own reads the last second every {@value LiveAnalysis#NOW_HOP_S} s, another a longer window every {@value #HOP_S} s,
 * a much longer one more seldom, or as soon as it is done with the one before. Where one of them fails, both end, and the listener is told.
 */
public final class LiveChain implements BlockSink, AutoCloseable {
    /** Length of the window while no speed is held. */
    public static final double WINDOW_S = 8;
    /** Longest window: twice the longest dwell of a plan, and what came before. */
    public static final double LONGEST_S = 250;
    /** Least time between two windows. */
    public static final double HOP_S = 1;

    private static final int MOST_BLOCKS = 200; // some seconds of sound; older ones are dropped and counted
    private static final long LOOK_MS = 100; // how late the end of a thread is seen
    /** So long the last window of a take may wait for the one before it. */
    private static final long LAST_MS = 5000;

    private static final FileHash NO_HASH = FileHash.of("0".repeat(64));

    private final double rateHz;
    private final List<String> names;
    private final double keepUpToHz;
    private final LiveAnalysis analysis;
    private final SoundBacklog backlog;
    private final SynchronousQueue<Recording> windows = new SynchronousQueue<>();
    private final AtomicBoolean failed = new AtomicBoolean();
    private final Thread quick = thread("live speed", this::work);
    private final Thread slow = thread("live orders", this::readWindows);
    private SlidingWindow window;
    private long windowBegan;
    private long expected;
    private double windowAtS;
    private volatile boolean closed;
    private volatile boolean workedOff;
    private volatile boolean readerWaits;
    private volatile long lookedAtFrames;
    private volatile boolean windowDue;

    /**
     * Starts to listen.
     *
     * @param rateHz of the sound
     * @param names of its channels
     * @param keepUpToHz highest frequency of interest
     * @param reader reads the windows
     * @param listener told of every result, on the chain's threads
     */
    public LiveChain(double rateHz, List<String> names, double keepUpToHz, WindowReader reader, LiveListener listener) {
        this.rateHz = rateHz;
        this.names = List.copyOf(names);
        this.keepUpToHz = Math.min(keepUpToHz, Recording.USABLE_SHARE_OF_RATE * rateHz);
        this.analysis = new LiveAnalysis(reader, listener);
        this.backlog = new SoundBacklog(names.size(), MOST_BLOCKS);
        quick.start();
        slow.start();
    }

    /** A thread that never costs a take: whatever goes wrong in it is told, and ends the chain alone. */
    private Thread thread(String name, Work work) {
        Thread thread = new Thread(
                () -> {
                    try {
                        work.run();
                    } catch (InterruptedException e) {
                        Thread.currentThread().interrupt();
                    } catch (RuntimeException | Error e) {
                        if (failed.compareAndSet(false, true)) {
                            analysis.failed();
                        }
                    }
                },
                name);
        thread.setDaemon(true);
        thread.setPriority(Thread.MIN_PRIORITY);
        return thread;
    }

    @FunctionalInterface
    private interface Work {
        void run() throws InterruptedException;
    }

    @Override
    public void accept(float[] interleaved, int frames) {
        if (!failed.get()) {
            backlog.accept(interleaved, frames);
        }
    }

    private void work() throws InterruptedException {
        try {
            double lookedAtS = 0;
            while (!failed.get() && (!closed || !backlog.empty())) {
                // Without a block too: a window that was due while the reader was busy doesn't wait for more sound.
                backlog.take(LOOK_MS).ifPresent(this::take);
                double nowS = expected / rateHz;
                if (nowS - lookedAtS >= LiveAnalysis.NOW_HOP_S && backlog.empty()) {
                    lookedAtS = nowS;
                    analysis.now(recording(SpeedNow.STRETCH_S));
                }
                if (readerWaits) {
                    offerWindow(nowS, analysis.hopS(nowS), 0);
                }
                windowDue = nowS - windowAtS >= analysis.hopS(nowS);
                lookedAtFrames = expected;
            }
            offerWindow(expected / rateHz, HOP_S, LAST_MS);
        } finally {
            workedOff = true;
        }
    }

    /** Hands a window over where one is due. */
    private void offerWindow(double nowS, double hopS, long patienceMs) throws InterruptedException {
        if (nowS - windowAtS >= hopS
                && backlog.empty()
                && windows.offer(recording(analysis.windowS(nowS)), patienceMs, TimeUnit.MILLISECONDS)) {
            windowAtS = nowS;
            readerWaits = false;
        }
    }

    /**
     * Whether so many frames have been looked at and no window is due or being read, or nothing will be any more: for
     * whoever plays a recording faster than it was made. From any thread.
     */
    public boolean upToDate(long frames) {
        return failed.get() || lookedAtFrames >= frames && !windowDue && readerWaits;
    }

    private void readWindows() throws InterruptedException {
        while (!failed.get() && !workedOff) {
            readerWaits = true;
            Recording next = windows.poll(LOOK_MS, TimeUnit.MILLISECONDS);
            readerWaits = false;
            if (next != null) {
                analysis.window(next, backlog.skippedFrames() / rateHz);
            }
        }
    }

    /** Sound that doesn't follow on what came before begins a new window. */
    private void take(SoundBacklog.Block block) {
        if (window == null || block.firstFrame != expected) {
            window = SlidingWindow.plan(rateHz, keepUpToHz, names.size(), LONGEST_S);
            windowBegan = block.firstFrame;
        }
        window.accept(block.samples, block.frames);
        expected = block.firstFrame + block.frames;
    }

    /** The latest seconds, or as many as there are. */
    private Recording recording(double seconds) {
        int size = (int) Math.min(window.size(), Math.round(seconds * window.rateHz()));
        double fromS = windowBegan / rateHz + window.fromS() + (window.size() - size) / window.rateHz();
        TimeBase time = new TimeBase.Even(fromS, window.rateHz(), size);
        List<Channel> channels = new ArrayList<>();
        for (int c = 0; c < names.size(); c++) {
            channels.add(new Channel(names.get(c), SignalUnit.FULL_SCALE, window.latest(c, size)));
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
            quick.join();
            slow.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
