package evenblade.face.desktop;

import java.awt.AWTEvent;
import java.awt.EventQueue;
import java.awt.Toolkit;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadInfo;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * Counts how often the event thread was busy with one event for longer than a person notices: computing, or
 * waiting for somebody. Time that the machine gave to other programs meanwhile isn't counted.
 */
final class EventThreadWatch extends EventQueue {
    private static final long NOTICED_MS = 50;

    private final List<Long> blocks = Collections.synchronizedList(new ArrayList<>());
    private final ThreadMXBean threads = ManagementFactory.getThreadMXBean();

    private EventThreadWatch() {
        threads.setThreadContentionMonitoringEnabled(true);
    }

    static EventThreadWatch begin() {
        EventThreadWatch watch = new EventThreadWatch();
        Toolkit.getDefaultToolkit().getSystemEventQueue().push(watch);
        return watch;
    }

    @Override
    protected void dispatchEvent(AWTEvent event) {
        long began = busyMs();
        super.dispatchEvent(event);
        long ms = busyMs() - began;
        if (ms > NOTICED_MS) {
            blocks.add(ms);
        }
    }

    private long busyMs() {
        ThreadInfo here = threads.getThreadInfo(Thread.currentThread().getId());
        return threads.getCurrentThreadCpuTime() / 1_000_000 + here.getBlockedTime() + here.getWaitedTime();
    }

    /** The blocks since the start, in milliseconds. */
    List<Long> blocksMs() {
        return List.copyOf(blocks);
    }

    void forget() {
        blocks.clear();
    }

    void end() {
        pop();
    }
}
