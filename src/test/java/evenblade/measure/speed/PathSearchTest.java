package evenblade.measure.speed;

import static evenblade.measure.speed.HandMadeLines.waves;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.Shaft;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** A path is the best there is: what it collects less what its changes cost, 0.15 for every thousandth. */
class PathSearchTest {
    private static Comb comb(double... orders) {
        return new Comb(
                java.util.Arrays.stream(orders)
                        .mapToObj(o -> new Comb.ExpectedLine(
                                new OrderLine(Shaft.PROPELLER, o, o, "" + o, OrderLine.Role.UNEVEN_PROPELLER, 1), 1))
                        .toList(),
                java.util.Arrays.stream(orders).max().orElseThrow());
    }

    private static double[] path(WhitenedSpectrogram frames, PathSearch search, double fromHz, double toHz) {
        return search.best(IntStream.range(0, frames.frames()).toArray(), fromHz, toHz)
                .hz();
    }

    private static double worth(PathSearch search, double[] hz) {
        double sum = 0;
        for (int f = 0; f < hz.length; f++) {
            sum += search.evidence(f, hz[f]);
            sum -= f == 0 ? 0 : 0.15 * 1000 * Math.abs(Math.log(hz[f] / hz[f - 1]));
        }
        return sum;
    }

    /** A speed that swings by 2 % in deep noise: no part of the path, moved by one to five steps of 0.02 %, is worth more. */
    @Test
    void noPathBesideTheOneFoundIsWorthMore() {
        WhitenedSpectrogram frames = HandMadeLines.frames(
                HandMadeLines.noisy(
                        400,
                        10,
                        1.2,
                        t -> waves(30 * t + 0.6 * Math.sin(t) / 2, 1, 1, 0, 0.6, 2, 1, 0.8, 3, 2, 0.7, 5, 0)),
                180);
        PathSearch search = new PathSearch(frames, comb(1, 2, 3, 5), SpeedPrior.between(25, 36));
        double[] hz = path(frames, search, 25, 36);
        double most = worth(search, hz);
        for (int from = 0; from < hz.length; from++) {
            for (int to = from + 1; to <= hz.length; to++) {
                for (int steps : new int[] {-5, -2, -1, 1, 2, 5}) {
                    double[] moved = hz.clone();
                    for (int f = from; f < to; f++) {
                        moved[f] *= Math.exp(2e-4 * steps);
                    }
                    assertThat(worth(search, moved)).isLessThan(most + 1e-9);
                }
            }
        }
    }

    /** A burst at another speed in one frame costs two changes of 18 %, 27 each; a frame of three lines has some 15. */
    @Test
    void aBurstDoesNotDrawThePathAway() {
        WhitenedSpectrogram frames = HandMadeLines.frames(
                HandMadeLines.noisy(400, 8, 0.1, t -> {
                    double own = waves(30 * t, 1, 1, 0, 1, 2, 1, 1, 3, 2);
                    double other = waves(25 * t, 1, 1, 0, 1, 2, 1, 1, 3, 2);
                    return t > 3.5 && t < 4.5 ? 10 * other : own;
                }),
                180);
        PathSearch search = new PathSearch(frames, comb(1, 2, 3), SpeedPrior.between(22, 36));
        for (double hz : path(frames, search, 22, 36)) {
            assertThat(hz).isCloseTo(30, within(0.3));
        }
    }

    /** 60 Hz is twice 30 or three times 20; what was entered settles it. */
    @Test
    void anEnteredSpeedSettlesADraw() {
        WhitenedSpectrogram frames =
                HandMadeLines.frames(HandMadeLines.noisy(400, 6, 0.3, t -> waves(60 * t, 1, 1, 0)), 180);
        for (double entered : new double[] {19, 31}) {
            PathSearch search = new PathSearch(frames, comb(2, 3), SpeedPrior.near(entered, 15, 40));
            double truth = entered < 25 ? 20 : 30;
            for (double hz : path(frames, search, 15, 40)) {
                assertThat(hz).isCloseTo(truth, within(0.1));
            }
        }
    }

    /** Strong lines of 45 Hz beyond the range, none within. */
    @Test
    void aPathStaysInTheRange() {
        WhitenedSpectrogram frames = HandMadeLines.frames(
                HandMadeLines.noisy(400, 6, 0.1, t -> waves(45 * t, 1, 1, 0, 1, 2, 1, 1, 3, 2)), 180);
        PathSearch search = new PathSearch(frames, comb(1, 2, 3), SpeedPrior.between(25, 36));
        for (double hz : path(frames, search, 25, 36)) {
            assertThat(hz).isBetween(25.0, 36.0);
        }
        for (double hz : path(frames, search, 45, 45)) {
            assertThat(hz).isEqualTo(45);
        }
    }
}
