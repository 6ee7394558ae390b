package evenblade.face.app;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Function;

/** Does several things at once: as many as there are cores, two at least; the rest wait their turn. */
final class Workers implements AutoCloseable {
    private final ExecutorService threads =
            Executors.newFixedThreadPool(Math.max(2, Runtime.getRuntime().availableProcessors()));

    /** Begins a piece of work; {@link #take} brings what came of it. */
    <T> Future<T> begin(Callable<T> work) {
        return threads.submit(work);
    }

    /** Begins the same work on many things. */
    <S, T> List<Future<T>> beginAll(List<S> things, Function<S, T> work) {
        List<Future<T>> begun = new ArrayList<>();
        things.forEach(thing -> begun.add(begin(() -> work.apply(thing))));
        return begun;
    }

    /** Waits for a piece of work; what it threw is thrown here. */
    static <T> T take(Future<T> begun) {
        try {
            return begun.get();
        } catch (ExecutionException e) {
            throw e.getCause() instanceof RuntimeException cause ? cause : new IllegalStateException(e.getCause());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("the work was broken off", e);
        }
    }

    /** Waits for all, in the order in which they were begun. */
    static <T> List<T> takeAll(List<Future<T>> begun) {
        return begun.stream().map(Workers::take).toList();
    }

    /** What still waits isn't begun any more. */
    @Override
    public void close() {
        threads.shutdownNow();
    }
}
