package evenblade.measure.live;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.base.units.SignalUnit;
import evenblade.measure.live.LiveListener.LiveNow;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedNow;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class SpeedFollowerTest {
    private static final double HZ = 30;

    private final SpeedFollower follower = new SpeedFollower();
    private double toS = 1;

    /** The next quick speed, a quarter of a second on; steady lines show evidence of about 100. */
    private LiveNow look(double hz, double evidence, double rivalShare) {
        toS += LiveAnalysis.NOW_HOP_S;
        return follower.take(toS, Optional.of(new SpeedNow(toS - 0.6, toS, hz, 0.1, evidence, rivalShare)));
    }

    /** A long window that ends now and in a hold that began at 0 s; in none without a speed. */
    private void window(double... hz) {
        List<DwellOrders> dwells = Arrays.stream(hz)
                .mapToObj(each -> new DwellOrders(
                        new Dwell(0, toS, each, 0.001, each, each), List.of(), List.of(), Optional.empty()))
                .toList();
        follower.take(new LiveReading(
                0,
                toS,
                2.43,
                Optional.empty(),
                List.of(new ChannelOrders("mono", SignalUnit.FULL_SCALE, dwells)),
                Optional.empty(),
                0));
    }

    private void confirmed() {
        for (int i = 0; i < 12; i++) {
            look(HZ, 100, 0.8);
        }
        window(HZ);
        look(HZ, 100, 0.8);
    }

    @Test
    void nothingIsShownBeforeALongWindowHasConfirmedTheSpeed() {
        assertThat(look(HZ, 100, 0.5).speed()).isEmpty();
    }

    @Test
    void aSpeedThatGoesOnIsNotDoubtedBecauseAnotherExplainsNearlyAsMuch() {
        confirmed();
        for (int i = 0; i < 8; i++) {
            LiveNow now = look(HZ * 1.005, 98, 0.9);
            assertThat(now.speed()).isPresent();
        }
        assertThat(look(HZ, 98, 0.9).steadyFromS())
                .hasValueSatisfying(from -> assertThat(from).isLessThan(toS - 2));
    }

    @Test
    void aSpeedThatEveryLongWindowConfirmsIsShownHoweverNearlyAnotherExplainsIt() {
        for (int i = 0; i < 12; i++) {
            look(HZ, 100, 0.9);
        }
        window(HZ);

        assertThat(look(HZ, 100, 0.9).speed()).isPresent();
    }

    @Test
    void aNewSpeedThatAnotherExplainsNearlyAsWellIsNotShown() {
        confirmed();
        window();

        assertThat(look(1.5 * HZ, 98, 0.9).speed()).isEmpty();
        assertThat(look(1.5 * HZ, 98, 0.7).speed()).isPresent();
    }

    @Test
    void blurredLinesShowNoSpeed() {
        confirmed();

        assertThat(look(HZ, 40, 0.5).speed()).isEmpty();
    }
}
