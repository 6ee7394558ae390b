package evenblade.face.cli;

import java.io.PrintWriter;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * Lets Ctrl-C, a closed terminal or a shutdown of the machine end work cleanly: it is stopped, and the
 * process waits until it is put away.
 */
final class CleanEnd implements AutoCloseable {
    private static final long PATIENCE_S = 60; // a slow disk needs seconds to settle the file

    private final CountDownLatch done = new CountDownLatch(1);
    private final Thread hook;

    private CleanEnd(Runnable stop, PrintWriter out) {
        this.hook = new Thread(
                () -> {
                    stop.run();
                    if (finished()) {
                        out.flush();
                        // The work ended as it was told to; without this the status would speak of a signal.
                        Runtime.getRuntime().halt(ExitStatus.DONE);
                    }
                },
                "clean end");
    }

    /**
     * From now on until closed, an end of the process first stops the work and waits for it.
     *
     * @param stop makes the work end soon
     * @param out flushed at the end
     */
    static CleanEnd by(Runnable stop, PrintWriter out) {
        CleanEnd end = new CleanEnd(stop, out);
        Runtime.getRuntime().addShutdownHook(end.hook);
        return end;
    }

    private boolean finished() {
        try {
            return done.await(PATIENCE_S, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            return false;
        }
    }

    @Override
    public void close() {
        done.countDown();
        try {
            Runtime.getRuntime().removeShutdownHook(hook);
        } catch (IllegalStateException e) {
            // The process is ending: the hook runs already and was waiting for this.
        }
    }
}
