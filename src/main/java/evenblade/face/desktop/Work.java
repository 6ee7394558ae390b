package evenblade.face.desktop;

import evenblade.base.problem.BadInput;
import evenblade.face.app.Progress;
import java.io.IOException;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import javax.swing.SwingUtilities;

/** Does everything that takes time away from the event thread; answers come back on it. */
final class Work {
    private final ExecutorService answers = daemons("evenblade-work", 1);
    private final ExecutorService drawing = daemons("evenblade-draw", 1);
    private Watcher watcher = new Watcher() {
        @Override
        public void began(Task task) {}

        @Override
        public void at(Task task, double share, String doing) {}

        @Override
        public void ended(Task task) {}
    };

    /** Something that takes time. */
    interface Labour<T> {
        T done(Progress progress) throws IOException;
    }

    /** Shows what is being done; called on the event thread. */
    interface Watcher {
        void began(Task task);

        void at(Task task, double share, String doing);

        void ended(Task task);
    }

    /** A piece of work under way. */
    static final class Task {
        private final String what;
        private final AtomicBoolean givenUp = new AtomicBoolean();
        private final AtomicBoolean stopped = new AtomicBoolean();

        Task(String what) {
            this.what = what;
        }

        String what() {
            return what;
        }

        /** Stops it at its next sign of progress; its answer is no longer wanted. */
        void giveUp() {
            givenUp.set(true);
        }

        /** Stops it at its next sign of progress, as a person asked for, and says so to whoever began it. */
        void stop() {
            stopped.set(true);
        }

        boolean stopping() {
            return stopped.get();
        }
    }

    void watchedBy(Watcher watcher) {
        this.watcher = watcher;
    }

    /**
     * Begins a piece of work.
     *
     * @param what is being done, for people
     * @param done gets the answer, on the event thread; not called once the work was given up
     * @param failed gets what went wrong in words
     */
    <T> Task begin(String what, Labour<T> labour, Consumer<T> done, Consumer<String> failed) {
        Task task = new Task(what);
        watcher.began(task);
        answers.execute(() -> carryOut(task, labour, done, failed));
        return task;
    }

    /** Begins work beside everything else, for what must not wait and takes long by its nature; nobody watches it. */
    <T> Task alongside(String what, Labour<T> labour, Consumer<T> done, Consumer<String> failed) {
        Task task = new Task(what);
        Thread thread = new Thread(() -> carryOut(task, labour, done, failed), "evenblade-" + what);
        thread.setDaemon(true);
        thread.start();
        return task;
    }

    private <T> void carryOut(Task task, Labour<T> labour, Consumer<T> done, Consumer<String> failed) {
        try {
            T answer = labour(task, labour);
            later(task, () -> done.accept(answer));
        } catch (CancellationException e) {
            later(task, () -> failed.accept("Stopped before it was done. Nothing was written."));
        } catch (BadInput e) {
            later(task, () -> failed.accept(e.getMessage()));
        } catch (IOException e) {
            later(task, () -> failed.accept("The disk refused: " + e.getMessage()));
        } catch (RuntimeException | OutOfMemoryError e) {
            later(task, () -> failed.accept("A fault of the program, not yours (" + e + "). Nothing was changed."));
        } finally {
            SwingUtilities.invokeLater(() -> watcher.ended(task));
        }
    }

    /** Draws a picture, or does some other short thing that nobody watches. */
    void aside(Runnable drawing) {
        this.drawing.execute(drawing);
    }

    private static void goOn(Task task) {
        if (task.givenUp.get() || task.stopped.get()) {
            throw new CancellationException(task.what);
        }
    }

    private <T> T labour(Task task, Labour<T> labour) throws IOException {
        goOn(task);
        return labour.done((share, doing) -> report(task, share, doing));
    }

    /** What is done already isn't thrown away. */
    private void report(Task task, double share, String doing) {
        if (share < 1) {
            goOn(task);
        }
        SwingUtilities.invokeLater(() -> watcher.at(task, share, doing));
    }

    private static void later(Task task, Runnable answer) {
        SwingUtilities.invokeLater(() -> {
            if (!task.givenUp.get()) {
                answer.run();
            }
        });
    }

    private static ExecutorService daemons(String name, int threads) {
        return Executors.newFixedThreadPool(threads, work -> {
            Thread thread = new Thread(work, name);
            thread.setDaemon(true);
            return thread;
        });
    }
}
