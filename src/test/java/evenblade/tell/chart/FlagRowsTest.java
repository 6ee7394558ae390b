package evenblade.tell.chart;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.tell.chart.FlagRows.Flag;
import evenblade.tell.chart.FlagRows.Layout;
import evenblade.tell.chart.FlagRows.Place;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FlagRowsTest {
    private static final double GAP = 4;

    @ParameterizedTest
    @ValueSource(ints = {1, 5, 14, 26, 60})
    void noNameLiesOnAnotherAndNoneLeavesTheRoom(int count) {
        for (int seed = 0; seed < 40; seed++) {
            Random random = new Random(seed);
            List<Flag> flags = new ArrayList<>();
            for (int i = 0; i < count; i++) {
                flags.add(new Flag(800 * random.nextDouble(), 30 + 90 * random.nextDouble(), i));
            }
            Layout layout = FlagRows.layOut(flags, 0, 800, GAP, 5);
            assertThat(layout.rows()).isLessThanOrEqualTo(5);
            for (int i = 0; i < count; i++) {
                if (layout.places().get(i).isEmpty()) {
                    continue;
                }
                Place a = layout.places().get(i).get();
                double aRight = a.left() + flags.get(i).width();
                assertThat(a.left()).isGreaterThanOrEqualTo(0);
                assertThat(aRight).isLessThanOrEqualTo(800 + 1e-9);
                for (int j = 0; j < i; j++) {
                    if (layout.places().get(j).isPresent()
                            && layout.places().get(j).get().row() == a.row()) {
                        Place b = layout.places().get(j).get();
                        assertThat(aRight + GAP <= b.left()
                                        || b.left() + flags.get(j).width() + GAP <= a.left())
                                .as("names %d and %d of seed %d", i, j, seed)
                                .isTrue();
                    }
                }
            }
        }
    }

    @Test
    void namesThatHaveRoomStayInOneRow() {
        Layout layout = FlagRows.layOut(List.of(new Flag(10, 50, 1), new Flag(100, 50, 1)), 0, 300, GAP, 5);
        assertThat(layout.rows()).isEqualTo(1);
        assertThat(layout.leftOut()).isZero();
    }

    @Test
    void theLaterOfTwoNamesThatWouldTouchLiesBelowSoThatNoStaffCrossesAName() {
        Layout layout = FlagRows.layOut(List.of(new Flag(10, 50, 1), new Flag(30, 50, 1)), 0, 300, GAP, 5);
        assertThat(layout.places().get(0).orElseThrow().row()).isEqualTo(1);
        assertThat(layout.places().get(1).orElseThrow().row()).isZero();
    }

    @Test
    void aNameAtTheRightEndFliesToTheLeft() {
        Place place = FlagRows.layOut(List.of(new Flag(290, 50, 1)), 0, 300, GAP, 5)
                .places()
                .get(0)
                .orElseThrow();
        assertThat(place.leftward()).isTrue();
        assertThat(place.left()).isEqualTo(240);
    }

    @Test
    void theLowestRankIsLeftOutFirst() {
        Layout layout =
                FlagRows.layOut(List.of(new Flag(10, 50, 3), new Flag(12, 50, 1), new Flag(14, 50, 2)), 0, 300, GAP, 2);
        assertThat(layout.leftOut()).isEqualTo(1);
        assertThat(layout.places().get(1)).isEmpty();
    }
}
