package evenblade.face.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

@DisplayName("Work off the event thread")
class WorkTest {
    private final Work work = new Work();
    private final List<String> heard = new CopyOnWriteArrayList<>();
    private final CountDownLatch answered = new CountDownLatch(1);

    private void hear(String words) {
        heard.add(words);
        answered.countDown();
    }

    private void awaitAnswer() throws InterruptedException {
        assertThat(answered.await(10, TimeUnit.SECONDS)).isTrue();
    }

    @Test
    @DisplayName("ends at its next sign of progress once a person stops it, and says that nothing was written")
    void stoppedWorkSaysSo() throws InterruptedException {
        CountDownLatch begun = new CountDownLatch(1);
        Work.Task task = work.begin(
                "long work",
                progress -> {
                    for (int i = 0; i < 1_000_000; i++) {
                        progress.at(i / 1e6, "at it");
                        begun.countDown();
                        Hands.pause(1);
                    }
                    return "done";
                },
                this::hear,
                this::hear);
        begun.await();
        task.stop();
        awaitAnswer();
        assertThat(heard).containsExactly("Stopped before it was done. Nothing was written.");
    }

    @Test
    @DisplayName("that is done already isn't thrown away by a stop that comes too late")
    void finishedWorkIsKept() throws InterruptedException {
        CountDownLatch begun = new CountDownLatch(1);
        CountDownLatch stopped = new CountDownLatch(1);
        Work.Task task = work.begin(
                "short work",
                progress -> {
                    begun.countDown();
                    await(stopped);
                    progress.at(1, "done");
                    return "the answer";
                },
                this::hear,
                this::hear);
        begun.await();
        task.stop();
        stopped.countDown();
        awaitAnswer();
        assertThat(heard).containsExactly("the answer");
    }

    @Test
    @DisplayName("that nobody wants any more falls silent")
    void givenUpWorkIsSilent() throws InterruptedException {
        CountDownLatch goOn = new CountDownLatch(1);
        Work.Task task = work.begin(
                "work for a page that was left",
                progress -> {
                    await(goOn);
                    progress.at(0.5, "at it");
                    return "the answer";
                },
                this::hear,
                this::hear);
        task.giveUp();
        goOn.countDown();
        work.begin("the next", progress -> "next", this::hear, this::hear);
        awaitAnswer();
        assertThat(heard).containsExactly("next");
    }

    private static void await(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }
}
