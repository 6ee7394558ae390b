package evenblade.measure.speed;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** Blocks of 1 s from 10 s on, a new one every half second: block i has its middle at 10.5 + i/2 s. */
@DisplayName("The ends of a hold")
class HoldEndsTest {
    private static final DwellFinder.Stretch STRETCH = new DwellFinder.Stretch(10, 25.3);

    private static double[] still(int count) {
        double[] still = new double[count];
        Arrays.fill(still, 1);
        return still;
    }

    private static DwellFinder.Stretch hold(double[] still, boolean fromMoved, boolean toMoved) {
        double[] time = IntStream.range(0, still.length)
                .mapToDouble(i -> 10.5 + i / 2.0)
                .toArray();
        return HoldEnds.of(still, 1, fromMoved, toMoved).within(STRETCH, time);
    }

    @Test
    @DisplayName("stay where nobody moved the throttle")
    void stayWhereNobodyMovedIt() {
        assertThat(hold(still(29), false, false)).isEqualTo(STRETCH);
    }

    @Test
    @DisplayName("are left out for a block's length at a move, whichever end it is")
    void areLeftOutAtAMove() {
        // The second block's middle is 11 s, a second in; the last but one of 29 has its own at 10.5 + 27/2 = 24 s.
        assertThat(hold(still(29), true, false)).isEqualTo(new DwellFinder.Stretch(11, 25.3));
        assertThat(hold(still(29), false, true)).isEqualTo(new DwellFinder.Stretch(10, 24));
        assertThat(HoldEnds.of(still(29), 1, true, true).first()).isEqualTo(1);
        assertThat(HoldEnds.of(still(29), 1, true, true).end()).isEqualTo(28);
    }

    @Test
    @DisplayName("go where the lines don't stand still, and a block's length more")
    void goWhereLinesMove() {
        double[] still = still(29);
        still[0] = 0.1;
        still[1] = 0.2;

        assertThat(hold(still, true, false)).isEqualTo(new DwellFinder.Stretch(12, 25.3));
        assertThat(hold(still, false, false)).isEqualTo(STRETCH);
    }

    @Test
    @DisplayName("of a short hold are kept")
    void ofAShortHoldAreKept() {
        assertThat(hold(still(13), true, true)).isEqualTo(STRETCH);
        assertThat(hold(still(14), true, true)).isNotEqualTo(STRETCH);
    }
}
