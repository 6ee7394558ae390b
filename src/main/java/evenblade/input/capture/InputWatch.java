package evenblade.input.capture;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Value.Quoted;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Looks every second whether a live input still comes from where it came at first: where a device vanishes, the system
 * may hand over another one without a word. Works on a thread of its own; a system that can't be asked is left alone.
 */
final class InputWatch implements AutoCloseable {
    static final long EVERY_MS = 1000; // a plug pulled is seen within a second
    /** A stream is known to the server only a moment after it was begun. */
    private static final int FIRST_TRIES = 5;

    private final LiveSource input;
    private final Consumer<Fact> onChange;
    private final long everyMs;
    private final Thread thread = new Thread(this::watch, "watching the input");
    private volatile boolean closed;
    private Runnable answer = () -> {};

    /** @param onChange told once, on the watch's thread, what changed */
    InputWatch(LiveSource input, Consumer<Fact> onChange, long everyMs) {
        this.input = input;
        this.onChange = onChange;
        this.everyMs = everyMs;
        thread.setDaemon(true);
        thread.setPriority(Thread.MIN_PRIORITY);
    }

    /** @param onAnswer told where the system says where the sound comes from */
    void start(Runnable onAnswer) {
        answer = onAnswer;
        thread.start();
    }

    private void watch() {
        Optional<String> first = Optional.empty();
        try {
            for (int i = 0; i < FIRST_TRIES && first.isEmpty() && !closed; i++) {
                Thread.sleep(everyMs);
                first = input.comesFrom();
            }
            if (first.isEmpty()) {
                return;
            }
            answer.run();
            while (!closed) {
                Thread.sleep(everyMs);
                Optional<String> now = input.comesFrom();
                if (now.isPresent() && !now.equals(first)) {
                    onChange.accept(Fact.of(CaptureFact.GAVE_WAY, new Quoted(first.get()), new Quoted(now.get())));
                    return;
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public void close() {
        closed = true;
        thread.interrupt();
    }
}
