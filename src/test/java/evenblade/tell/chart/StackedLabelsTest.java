package evenblade.tell.chart;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.tell.chart.StackedLabels.Label;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

class StackedLabelsTest {
    @Test
    void namesBesideAPlotNeverOverlapAndKeepTheOrderOfWhatTheyName() {
        for (int seed = 0; seed < 100; seed++) {
            Random random = new Random(seed);
            List<Label> labels = new ArrayList<>();
            for (int i = 0; i < 30; i++) {
                labels.add(new Label(400 * random.nextDouble(), random.nextDouble()));
            }
            List<Optional<Double>> places = StackedLabels.layOut(labels, 0, 400, 16);
            assertThat(places.stream().filter(Optional::isPresent)).hasSize(25); // 400 / 16
            for (int i = 0; i < 30; i++) {
                for (int j = 0; j < 30; j++) {
                    if (places.get(i).isPresent()
                            && places.get(j).isPresent()
                            && labels.get(i).wanted() < labels.get(j).wanted()) {
                        assertThat(places.get(j).get() - places.get(i).get()).isGreaterThanOrEqualTo(16 - 1e-9);
                    }
                }
                places.get(i).ifPresent(y -> assertThat(y).isBetween(8 - 1e-9, 392 + 1e-9));
            }
        }
    }

    @Test
    void aNameWithRoomStaysWhereItBelongs() {
        assertThat(StackedLabels.layOut(List.of(new Label(100, 1), new Label(300, 1)), 0, 400, 16))
                .containsExactly(Optional.of(100.0), Optional.of(300.0));
    }
}
