package evenblade.measure.speed;

import static evenblade.measure.speed.Drawn.line;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.input.recording.Recording;
import evenblade.input.recording.TimeBase;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.Shaft;
import evenblade.measure.speed.DemodulatedOrders.Tone;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * Which lines a track is locked on: drawn in a little seeded noise, at places on whole bins of frames of half a second, where
 * a steady line's window is zero. Six hertz apart are three bins: (1/(π·3·8))² = 1.76e-4 of a line's power leaks over, which
 * may be 0.03 of the other's, so the weaker one needs 0.00586 of the power.
 */
class LockTonesTest {
    private static final double RATE_HZ = 256;
    private static final double FRAME_S = 0.5;
    private static final double JUST = 1.76e-4 / 0.03;

    private static Comb comb(double... orders) {
        return new Comb(
                Arrays.stream(orders)
                        .mapToObj(order -> new Comb.ExpectedLine(
                                new OrderLine(
                                        Shaft.PROPELLER, order, order, "×" + order, OrderLine.Role.UNEVEN_PROPELLER, 1),
                                1))
                        .toList(),
                20);
    }

    private static WhitenedSpectrogram frames(double sourceRateHz, double frameS, DoubleUnaryOperator... values) {
        Random dice = new Random(4);
        DoubleUnaryOperator[] noisy = Arrays.stream(values)
                .map(value -> (DoubleUnaryOperator) t -> value.applyAsDouble(t) + 0.005 * dice.nextGaussian())
                .toArray(DoubleUnaryOperator[]::new);
        Recording run = Drawn.recording(new TimeBase.Even(0, RATE_HZ, 768), sourceRateHz, noisy);
        return WhitenedSpectrogram.of(run, run.channels(), 110, frameS);
    }

    private static PathSearch.Path path(WhitenedSpectrogram frames, DoubleUnaryOperator hz) {
        return new PathSearch.Path(
                IntStream.range(0, frames.frames()).toArray(),
                IntStream.range(0, frames.frames())
                        .mapToDouble(f -> hz.applyAsDouble(frames.centreS(f)))
                        .toArray());
    }

    private static List<Tone> tones(DoubleUnaryOperator value, double[] humHz, double... orders) {
        return tones(FRAME_S, value, humHz, orders);
    }

    private static List<Tone> tones(double frameS, DoubleUnaryOperator value, double[] humHz, double... orders) {
        WhitenedSpectrogram frames = frames(RATE_HZ, frameS, value);
        return LockTones.along(frames, comb(orders), path(frames, t -> 20), humHz);
    }

    private static double[] orders(List<Tone> tones) {
        return tones.stream().mapToDouble(Tone::order).toArray();
    }

    /** The floor beside it, meant along a path that rises: what the frames say of it. */
    @Test
    void aLineThatStandsOutIsTakenWithTheNoiseAlongItsWay() {
        WhitenedSpectrogram frames =
                frames(RATE_HZ, FRAME_S, t -> line(1, 3, 20 * t + t * t), t -> line(1, 1, 20 * t + t * t));
        PathSearch.Path path = path(frames, t -> 20 + 2 * t);
        List<Tone> tones = LockTones.along(frames, comb(1, 2, 3), path, new double[0]);
        assertThat(tones).hasSize(2);
        double[] density = new double[2];
        for (double hz : path.hz()) {
            density[0] += frames.floorDensity(0, 3 * hz) / 21;
            density[1] += frames.floorDensity(1, hz) / 21;
        }
        assertThat(frames.frames()).isEqualTo(21);
        for (int k = 0; k < 2; k++) {
            Tone tone = tones.get(k);
            assertThat(tone.channel()).isEqualTo(k);
            assertThat(tone.order()).isEqualTo(k == 0 ? 3 : 1);
            assertThat(tone.shaft()).isEqualTo(Shaft.PROPELLER);
            assertThat(tone.density()).isCloseTo(density[k], within(1e-9 * density[k]));
            assertThat(tone.clear()).isTrue();
        }
    }

    /** By a sixth less or more than what a neighbour of 1 needs, in amplitude; the stronger one is always clear. */
    @Test
    void aLineIsClearWhereItsNeighbourLeaksLittleIntoIt() {
        for (double share : new double[] {0.7, 1.4}) {
            double weak = Math.sqrt(share * JUST);
            List<Tone> tones = tones(t -> line(1, 1, 20 * t) + line(weak, 1.3, 20 * t), new double[0], 1, 1.3);
            assertThat(orders(tones)).containsExactly(1, 1.3);
            assertThat(tones.get(0).clear()).isTrue();
            assertThat(tones.get(1).clear()).as("share " + share).isEqualTo(share > 1);
        }
    }

    /** Two neighbours, three bins of a second to either side: each leaks 0.6 of what is allowed. */
    @Test
    void whatNeighboursLeakAddsUp() {
        double weak = Math.sqrt(JUST / 0.6);
        DoubleUnaryOperator one = t -> line(1, 1, 20 * t) + line(weak, 1.15, 20 * t);
        List<Tone> two = tones(1, one, new double[0], 1, 1.15, 1.3);
        assertThat(orders(two)).containsExactly(1, 1.15);
        assertThat(two.get(1).clear()).isTrue();
        List<Tone> three = tones(1, t -> one.applyAsDouble(t) + line(1, 1.3, 20 * t), new double[0], 1, 1.15, 1.3);
        assertThat(orders(three)).containsExactly(1, 1.15, 1.3);
        assertThat(three.get(1).clear()).isFalse();
    }

    /** Hum of 26 Hz beside a line of 20; a line of 60 Hz is far from it. */
    @Test
    void aLineThatHumLeaksIntoIsLeftOut() {
        for (double share : new double[] {0.7, 1.4}) {
            double weak = Math.sqrt(share * JUST);
            DoubleUnaryOperator lines = t -> line(weak, 1, 20 * t) + line(0.3, 3, 20 * t);
            double[] hum = {26};
            assertThat(orders(tones(t -> lines.applyAsDouble(t) + line(1, 1.3, 20 * t), hum, 1, 3)))
                    .as("share " + share)
                    .containsExactly(share > 1 ? new double[] {1, 3} : new double[] {3});
            // Where hum might be but isn't, and where it lies beyond what is seen, nothing is left out.
            assertThat(orders(tones(lines, hum, 1, 3))).containsExactly(1, 3);
            assertThat(orders(tones(lines, new double[] {20_000}, 1, 3))).containsExactly(1, 3);
        }
    }

    /** Lines of hum three bins of a second to either side leak 0.6 each of what is allowed. */
    @Test
    void whatHumLeaksAddsUp() {
        double weak = Math.sqrt(JUST / 0.6);
        DoubleUnaryOperator lines =
                t -> line(weak, 1, 20 * t) + line(0.3, 3, 20 * t) + line(1, 1.15, 20 * t) + line(1, 0.85, 20 * t);
        assertThat(orders(tones(1, lines, new double[] {23}, 1, 3))).containsExactly(1, 3);
        assertThat(orders(tones(1, lines, new double[] {23, 17}, 1, 3))).containsExactly(3);
    }

    /** With nothing else to lock on, lines beside hum are better than none. */
    @Test
    void whereHumLeavesNoLineAllAreTaken() {
        double weak = Math.sqrt(0.7 * JUST);
        DoubleUnaryOperator lines = t -> line(weak, 1, 20 * t) + line(1, 1.3, 20 * t);
        assertThat(orders(tones(lines, new double[] {26}, 1))).containsExactly(1);
    }

    /** Order 5 at 20 to 24 Hz passes the 110 Hz that are seen; the recording was made at a higher rate, nothing folds. */
    @Test
    void aLineIsTakenIfItIsSeenForMoreThanHalfTheTime() {
        double beyond = 0;
        for (double rise : new double[] {1.2, 1.7}) {
            WhitenedSpectrogram frames = frames(4 * RATE_HZ, FRAME_S, t -> line(1, 5, 20 * t + rise / 2 * t * t));
            beyond = frames.highestHz();
            PathSearch.Path path = path(frames, t -> 20 + rise * t);
            double seen = Arrays.stream(path.hz())
                    .filter(hz -> 5 * hz <= frames.highestHz())
                    .count();
            List<Tone> tones = LockTones.along(frames, comb(5), path, new double[0]);
            assertThat(seen / 21).as("rise " + rise).matches(share -> rise < 1.5 ? share > 0.52 : share < 0.48);
            assertThat(tones).hasSize(rise < 1.5 ? 1 : 0);
        }
        assertThat(beyond).isBetween(110.0, 112.0);
    }
}
