package evenblade.base.problem;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NearestTest {
    /** Counted by hand; kitten to sitting is the textbook pair for this distance. */
    @ParameterizedTest
    @CsvSource({
        "kitten, sitting, 3",
        "blade, blade, 0",
        "baldes, blades, 1",
        "rpm, idleRpm, 4",
        "'', abc, 3",
        "MaxRPM, maxRpm, 0"
    })
    void changesAreCountedLetterByLetter(String from, String to, int changes) {
        assertThat(Nearest.changes(from, to)).isEqualTo(changes);
        assertThat(Nearest.changes(to, from)).isEqualTo(changes);
    }

    @Test
    void theNearestWordIsFoundAndOnlyAnAlikeOneIsSuggested() {
        List<String> known = List.of("plan", "orders", "compare");
        assertThat(Nearest.to("order", known)).contains("orders");
        assertThat(Nearest.alike("plna", known)).contains("plan");
        assertThat(Nearest.alike("balance", known)).isEmpty();
        assertThat(Nearest.to("plan", List.of())).isEmpty();
    }
}
