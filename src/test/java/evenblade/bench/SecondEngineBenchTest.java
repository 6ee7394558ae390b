package evenblade.bench;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.bench.SecondEngineBench.Tried;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Runs of the rig, which shares no code with the program; {@link SecondEngineBench} makes more, docs/figures.md tells. */
@Tag("long")
@DisplayName("A second engine of the same kind, 0.1 to 2 Hz away")
class SecondEngineBenchTest {
    @TempDir
    Path folder;

    private List<Tried> runs(boolean beside) throws IOException {
        return new SecondEngineBench(new ConfirmationBench(folder)).runs(300, 340, beside);
    }

    /** 90 of 100 were told when this was measured, 3 and 1 of 100 wrong without a word: bounds two standard errors off. */
    @Test
    @DisplayName("is told, or what is measured beside it is ours")
    void isTold() throws IOException {
        List<Tried> all = runs(true);

        assertThat(all.stream().filter(Tried::told).count()).isGreaterThanOrEqualTo(32);
        assertThat(all.stream().filter(Tried::wrongWithoutAWord).count()).isLessThanOrEqualTo(3);
    }

    @Test
    @DisplayName("isn't told where none runs")
    void isNotToldWhereNoneRuns() throws IOException {
        assertThat(runs(false)).allMatch(Tried::confirmed).noneMatch(Tried::told);
    }
}
