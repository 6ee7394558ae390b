package evenblade.face.cli;

import java.io.IOException;
import java.io.InputStream;
import java.util.Locale;

/**
 * Letters that lead a stepped run, typed while it records. Only what has been typed already is read: a program in the
 * background that waits for its terminal would be halted by the system, and the recording with it.
 */
final class StepKeys implements AutoCloseable {
    static final String HELP = "Type s and Enter to leave a step for later, r and Enter to do the last one again. Any"
            + " speed still to be held counts as soon as you hold it.";

    /** Where what is typed would be taken for a line. */
    static final String NO_KEYS =
            "Standard input brings the lines, so no key leaves a step for later or does one again;"
                    + " beside --serial, keys do. Any speed still to be held counts as soon as you hold it.";

    private static final long LOOK_MS = 100; // at once, to a hand

    private final Runnable later;
    private final Runnable again;
    private final InputStream typed;
    private final Thread thread = new Thread(this::work, "step keys");
    private volatile boolean closed;

    private StepKeys(Runnable later, Runnable again, InputStream typed) {
        this.later = later;
        this.again = again;
        this.typed = typed;
    }

    /** Listens until closed, or until nothing more can be typed. */
    static StepKeys listen(Runnable later, Runnable again, InputStream typed) {
        StepKeys keys = new StepKeys(later, again, typed);
        keys.thread.setDaemon(true);
        keys.thread.start();
        return keys;
    }

    private void work() {
        try {
            while (!closed) {
                while (typed.available() > 0) {
                    take((char) typed.read());
                }
                Thread.sleep(LOOK_MS);
            }
        } catch (IOException e) {
            // Nothing more can be typed; the recording goes on.
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void take(char key) {
        switch (String.valueOf(key).toLowerCase(Locale.ROOT)) {
            case "s" -> later.run();
            case "r" -> again.run();
            default -> {}
        }
    }

    @Override
    public void close() {
        closed = true;
    }
}
