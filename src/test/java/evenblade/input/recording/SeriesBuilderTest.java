package evenblade.input.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SeriesBuilderTest {
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 65_535, 65_536, 65_537, 131_072, 200_003})
    void givesBackWhatWasAppendedInPiecesTimesTheScale(int size) {
        float[] all = new float[size];
        for (int i = 0; i < size; i++) {
            all[i] = i;
        }
        SeriesBuilder builder = new SeriesBuilder();
        for (int from = 0; from < size; from += 40_001) {
            builder.append(all, from, Math.min(40_001, size - from));
        }
        Series series = builder.build(2);

        assertThat(series.size()).isEqualTo(size);
        double[] back = series.toArray();
        for (int i = 0; i < size; i++) {
            assertThat(back[i]).isEqualTo(2.0 * i);
            assertThat(series.at(i)).isEqualTo(2.0 * i);
        }
        if (size > 131_072) {
            double[] part = new double[70_000];
            series.copyTo(65_000, part, 70_000);
            assertThat(part[0]).isEqualTo(130_000);
            assertThat(part[69_999]).isEqualTo(269_998);
        }
    }

    @Test
    void isClosedOnceBuilt() {
        SeriesBuilder builder = new SeriesBuilder();
        builder.build(1);

        assertThatIllegalStateException().isThrownBy(() -> builder.append(new float[1], 0, 1));
        assertThatIllegalStateException().isThrownBy(() -> builder.build(1));
    }
}
