package evenblade.face.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

class StepKeysTest {
    @Test
    void lettersLeaveAStepForLaterAndDoOneAgainAndAnythingElseDoesNothing() throws InterruptedException {
        List<String> asked = new CopyOnWriteArrayList<>();
        CountDownLatch three = new CountDownLatch(3);
        Runnable later = () -> {
            asked.add("later");
            three.countDown();
        };
        Runnable again = () -> {
            asked.add("again");
            three.countDown();
        };
        try (StepKeys keys = StepKeys.listen(
                later, again, new ByteArrayInputStream("s\nx\n\nR\nS".getBytes(StandardCharsets.UTF_8)))) {
            assertThat(keys).isNotNull();
            assertThat(three.await(120, TimeUnit.SECONDS)).isTrue();
        }

        assertThat(asked).containsExactly("later", "again", "later");
    }
}
