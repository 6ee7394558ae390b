package evenblade.measure.speed;

import static evenblade.measure.speed.Drawn.line;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.input.recording.Recording;
import evenblade.input.recording.Series;
import evenblade.input.recording.TimeBase;
import evenblade.machine.installation.Shaft;
import evenblade.measure.speed.DemodulatedOrders.Tone;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Near lines taken apart, waves of orders, and the track put together from dwells. */
class LinesApartTest {
    private static final double RATE_HZ = 400;
    private static final double SECONDS = 6;

    private static DemodulatedOrders slices(DoubleUnaryOperator value, double startHz, Tone... tones) {
        Recording run = Drawn.recording(RATE_HZ, SECONDS, value);
        return DemodulatedOrders.of(
                run,
                run.channels(),
                List.of(tones),
                KnotTrack.constant(startHz, 0, SECONDS),
                new DwellFinder.Stretch(0, SECONDS));
    }

    private static Tone propeller(double order, double density) {
        return new Tone(0, order, Shaft.PROPELLER, density, true);
    }

    private static double furthest(DemodulatedOrders one, DemodulatedOrders other, double[] correction, int tone) {
        DemodulatedOrders.Blocks a = one.under(correction, 0).blocks(tone, 16, 8);
        DemodulatedOrders.Blocks b = other.under(correction, 0).blocks(tone, 16, 8);
        return IntStream.range(0, a.size())
                .mapToDouble(i -> Math.hypot(a.re(i) - b.re(i), a.im(i) - b.im(i)))
                .max()
                .orElseThrow();
    }

    /** Lines 3.5 Hz apart on a track that was off by up to a twentieth of a turn, there and back: 1/(π·3.5·11.25) leaks. */
    @Test
    void linesAreTakenApartUnderATrackThatIsPutRight() {
        DoubleUnaryOperator off = t -> 0.05 * Math.sin(2 * Math.PI * t / 4);
        double[] correction = IntStream.range(0, 96)
                .mapToDouble(s -> off.applyAsDouble((s + 0.5) / 16))
                .toArray();
        Tone[] tones = {propeller(1, 1e-9), propeller(1.175, 1e-9)};
        DoubleUnaryOperator one = t -> line(1, 1, 20 * t + off.applyAsDouble(t));
        DoubleUnaryOperator other = t -> line(0.5, 1.175, 20 * t + off.applyAsDouble(t));
        DemodulatedOrders both = slices(t -> one.applyAsDouble(t) + other.applyAsDouble(t), 20, tones);
        DemodulatedOrders apart = both.apart(correction, 0);
        double leak = 1 / (Math.PI * 3.5 * 11.25);
        DemodulatedOrders onlyOther = slices(other, 20, tones);
        assertThat(furthest(both, onlyOther, correction, 1)).isBetween(0.6 * leak, 1.5 * leak);
        assertThat(furthest(apart, onlyOther, correction, 1)).isLessThan(0.06 * leak);
        DemodulatedOrders onlyOne = slices(one, 20, tones);
        assertThat(furthest(apart, onlyOne, correction, 0)).isLessThan(0.06 * leak);
    }

    /** What leaks of a power of 1 is taken out where it is a fiftieth of the noise in a block, S·1.5/1 s. */
    @Test
    void whatDrownsInNoiseIsLeftAlone() {
        double just = Math.pow(1 / (Math.PI * 3.5 * 11.25), 2) / (0.02 * 1.5);
        for (double share : new double[] {0.8, 1.25}) {
            DemodulatedOrders both = slices(
                    t -> line(1, 1, 20 * t) + line(0.5, 1.175, 20 * t),
                    20,
                    propeller(1, 1),
                    propeller(1.175, share * just));
            double changed = furthest(both, both.apart(new double[96], 0), new double[96], 1);
            if (share < 1) {
                assertThat(changed).isGreaterThan(1e-3);
            } else {
                assertThat(changed).isZero();
            }
        }
    }

    /** Within ten bins of a block of a second, and more than four of the 6 s there are: from 0.67 to 10 Hz. */
    @Test
    void onlyNearLinesThatCanBeToldApartAreTakenApart() {
        double[] apartHz = {0.6, 0.75, 9.5, 10.5};
        for (int k = 0; k < 4; k++) {
            double other = 1 + apartHz[k] / 20;
            DemodulatedOrders both = slices(
                    t -> line(1, 1, 20 * t) + line(0.5, other, 20 * t),
                    20,
                    propeller(1, 1e-12),
                    propeller(other, 1e-12));
            double changed = furthest(both, both.apart(new double[96], 0), new double[96], 1);
            if (k == 1 || k == 2) {
                assertThat(changed).as(apartHz[k] + " Hz").isGreaterThan(1e-5);
            } else {
                assertThat(changed).as(apartHz[k] + " Hz").isZero();
            }
        }
        Recording run = Drawn.recording(RATE_HZ, SECONDS, t -> line(1, 1, 20 * t), t -> line(0.5, 1.175, 20 * t));
        DemodulatedOrders channels = DemodulatedOrders.of(
                run,
                run.channels(),
                List.of(propeller(1, 1e-12), new Tone(1, 1.175, Shaft.PROPELLER, 1e-12, true)),
                KnotTrack.constant(20, 0, SECONDS),
                new DwellFinder.Stretch(0, SECONDS));
        assertThat(furthest(channels, channels.apart(new double[96], 0), new double[96], 1))
                .isZero();
    }

    /** A sixth of a stretch to a block, 0.4 s at least and a second at most, sixteen slices to it. */
    @Test
    void blocksAreASixthOfAShortStretch() {
        double[][] secondsAndBlock = {{1.8, 0.4}, {4.2, 0.7}, {6, 1}};
        Recording run = Drawn.recording(RATE_HZ, SECONDS, t -> line(1, 1, 20 * t));
        for (double[] each : secondsAndBlock) {
            DemodulatedOrders slices = DemodulatedOrders.of(
                    run,
                    run.channels(),
                    List.of(propeller(1, 1)),
                    KnotTrack.constant(20, 0, SECONDS),
                    new DwellFinder.Stretch(0, each[0]));
            assertThat(slices.sliceS()).isCloseTo(each[1] / 16, within(1e-12));
        }
    }

    /** A track that has turned a thousand million times before: its turns are multiples of 1/64 of a turn and exact. */
    @Test
    void wavesAreExactAfterManyTurns() {
        SpeedTrack track = new SpeedTrack() {
            @Override
            public double fromS() {
                return 0;
            }

            @Override
            public double toS() {
                return 10;
            }

            @Override
            public double revolutionsAt(double t) {
                return 0x1p30 + 19 * t;
            }

            @Override
            public double propellerHzAt(double t) {
                return 19;
            }
        };
        double[] stamps = IntStream.range(0, 96)
                .mapToDouble(i -> 2 + (i + (i % 3) / 4.0) / 64)
                .toArray();
        for (TimeBase time : List.of(new TimeBase.Even(2, 64, 96), new TimeBase.Stamped(Series.of(stamps), 64))) {
            double[][] cos = new double[2][40];
            double[][] sin = new double[2][40];
            new OrderWaves(track, time, new double[] {1, 1.5}).fill(7, 40, cos, sin);
            for (int i = 0; i < 40; i++) {
                for (int k = 0; k < 2; k++) {
                    double angle = 2 * Math.PI * (k == 0 ? 1 : 1.5) * 19 * time.at(7 + i);
                    assertThat(cos[k][i]).isCloseTo(Math.cos(angle), within(1e-9));
                    assertThat(sin[k][i]).isCloseTo(Math.sin(angle), within(1e-9));
                }
            }
        }
    }

    /** From 3 s on at 24 Hz by the path; from 8 to 13 s phases say 24.02, a tenth of a turn more; then the path again. */
    @Test
    void aTrackIsPutTogetherFromPathAndPhasesWithoutAJump() {
        SpeedTrack path = KnotTrack.constant(24, 3, 23);
        SmoothedDwells dwells = new SmoothedDwells(path, 1.5);
        double[] time =
                IntStream.rangeClosed(0, 20).mapToDouble(i -> 8 + 0.25 * i).toArray();
        double[] turns = Arrays.stream(time).map(t -> 5 + 24.02 * t).toArray();
        double[] variance = new double[time.length];
        Arrays.fill(variance, 1e-8);
        dwells.of(new PhaseLock.Locked(new DwellFinder.Stretch(8, 13), time, turns, variance, path, 0, true, false, 1));
        SpeedTrack track = dwells.track();
        for (double t = 3; t <= 23; t += 0.03125) {
            double gained = 0.02 * Math.max(0, Math.min(5, t - 8));
            // Between the last knot of one and the first of the other the speed bends by 0.02 Hz within an eighth of a
            // second.
            assertThat(track.revolutionsAt(t)).as("at %s", t).isCloseTo(24 * (t - 3) + gained, within(1.5e-3));
            assertThat(track.propellerHzAt(t)).isCloseTo(t > 8 && t < 13 ? 24.02 : 24, within(0.025));
        }
        assertThat(track.propellerHzAt(7.5)).isCloseTo(24, within(1e-4));
        assertThat(track.propellerHzAt(10.5)).isCloseTo(24.02, within(1e-4));
        assertThat(track.propellerHzAt(13.5)).isCloseTo(24, within(1e-4));
    }
}
