package evenblade.measure.orders;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.fact.Value.Amount;
import evenblade.base.units.SignalUnit;
import evenblade.input.recording.Channel;
import evenblade.input.recording.Recording;
import evenblade.input.recording.Series;
import evenblade.input.recording.Stretch;
import evenblade.input.recording.TimeBase;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedTrack;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** Levels that step, by how much and when; everything by hand. The signal jumps to and fro about 5 by its level. */
@DisplayName("Whether a sensor kept its hold")
class SensorHoldTest {
    private static final double RATE_HZ = 400;
    private static final double EXACT = 1e-9; // of rounding

    /** 20 Hz and 0.2 Hz more every second. */
    private static final SpeedTrack RISING = new SpeedTrack() {
        @Override
        public double fromS() {
            return 0;
        }

        @Override
        public double toS() {
            return 30;
        }

        @Override
        public double revolutionsAt(double t) {
            return 20 * t + 0.1 * t * t;
        }

        @Override
        public double propellerHzAt(double t) {
            return 20 + 0.2 * t;
        }
    };

    private static SensorHold.Held held(DoubleUnaryOperator level, double fromS, double toS) {
        int size = (int) (25 * RATE_HZ);
        double[] x = new double[size];
        for (int i = 0; i < size; i++) {
            x[i] = 5 + (i % 2 == 0 ? 1 : -1) * level.applyAsDouble(i / RATE_HZ);
        }
        Channel channel = new Channel("x", SignalUnit.METRE_PER_SECOND_SQUARED, Series.of(x));
        Recording recording = new Recording(
                null,
                new TimeBase.Even(0, RATE_HZ, size),
                List.of(channel),
                List.of(),
                Optional.empty(),
                List.of(),
                List.of(new Stretch(0, 25)));
        return SensorHold.through(
                List.of(new Dwell(fromS, toS, 22, 0.001, 20, 24)), RISING, recording, List.of(channel));
    }

    private static DoubleUnaryOperator step(double atS, double to) {
        return t -> t < atS ? 1 : to;
    }

    /**
     * Threefold from 14 s on in a dwell of 2 to 22 s: kept up to the quarter of a second before, 11.75 s long. The mean speed
     * there is (rev(13.75) − rev(2))/11.75 = 20 + 0.1·15.75, its error (20/11.75)^1.5 times as large.
     */
    @Test
    @DisplayName("a step of the level ends the dwell before it")
    void steps() {
        for (double to : new double[] {3, 1 / 3.0}) {
            SensorHold.Held held = held(step(14, to), 2, 22);
            assertThat(held.warnings()).singleElement().satisfies(w -> {
                assertThat(((Amount) w.fact().values().get(1)).value()).isCloseTo(14, within(EXACT));
                assertThat(((Amount) w.fact().values().get(2)).value()).isCloseTo(to, within(1e-6));
            });
            assertThat(held.dwells()).singleElement().satisfies(d -> {
                assertThat(d.fromS()).isEqualTo(2);
                assertThat(d.toS()).isCloseTo(13.75, within(EXACT));
                assertThat(d.propellerHz()).isCloseTo(21.575, within(EXACT));
                assertThat(d.standardErrorHz()).isCloseTo(0.001 * Math.pow(20 / 11.75, 1.5), within(EXACT));
            });
        }
    }

    /** After 5 s of 2 to 22 s, 2.75 s are left: too short. At 5.5 s 3.25 s. */
    @Test
    @DisplayName("what is left of a dwell has to last three seconds")
    void tooShort() {
        assertThat(held(step(5, 3), 2, 22).dwells()).isEmpty();
        assertThat(held(step(5.5, 3), 2, 22).dwells()).hasSize(1);
    }

    @Test
    @DisplayName("5 dB or less, a swell that builds up, and a level that jumps all the time are no step")
    void noStep() {
        assertThat(held(t -> 1, 2, 22).warnings()).isEmpty();
        assertThat(held(step(14, 1.75), 2, 22).warnings()).isEmpty(); // ln 1.75 = 0.56
        assertThat(held(step(14, 1.82), 2, 22).warnings()).hasSize(1); // ln 1.82 = 0.60
        assertThat(held(t -> Math.exp(Math.max(0, Math.min(1.2, (t - 11) / 5))), 2, 22)
                        .warnings())
                .isEmpty();
        // By turns e^±0.2, block by block: four times that scatter is 0.8, above a step of ln 2 = 0.69, below ln 2.5.
        DoubleUnaryOperator restless = t -> Math.exp((int) Math.floor(t / 0.25) % 2 == 0 ? 0.2 : -0.2);
        // The median of an even number is one of the two levels, so the mean distance is 0.2, and the step up to 0.4
        // off.
        assertThat(held(t -> restless.applyAsDouble(t) * (t < 14 ? 1 : 1.4), 2, 22)
                        .warnings())
                .isEmpty();
        assertThat(held(t -> restless.applyAsDouble(t) * (t < 14 ? 1 : 4), 2, 22)
                        .warnings())
                .hasSize(1);
    }

    /**
     * Of 400 samples a second every k-th is a knock of 2, in no order of signs, the others nothing: the fourth moment over
     * the square of the second is k.
     */
    private static Series knocks(int every, int period) {
        float[] x = new float[2000];
        for (int i = 0; i < x.length; i += every) {
            int n = i % period;
            x[i] = (n * n + 3 * n) % 101 < 50 ? 2 : -2;
        }
        return Series.ofFloats(x, x.length);
    }

    @Test
    @DisplayName("knocks are peaked, a smooth noise isn't")
    void peaked() {
        assertThat(SensorHold.knocks(knocks(5, 10_000), RATE_HZ, 7.3)).isTrue();
        assertThat(SensorHold.knocks(knocks(4, 10_000), RATE_HZ, 7.3)).isFalse();
        // One second of four times the level is peaked no more than the others: seconds are judged one by one.
        float[] x = new float[2000];
        for (int i = 0; i < x.length; i++) {
            x[i] = (float) (knocks(4, 10_000).at(i) * (i < 400 ? 8 : 1));
        }
        assertThat(SensorHold.knocks(Series.ofFloats(x, x.length), RATE_HZ, 7.3))
                .isFalse();
    }

    /** The same every 40 samples: ten times a second, and so every turn of a shaft at 10 Hz, or at 9.93. */
    @Test
    @DisplayName("what comes back every turn is a mark, not a knock")
    void everyTurn() {
        Series marked = knocks(5, 40);
        assertThat(SensorHold.knocks(marked, RATE_HZ, 10)).isFalse();
        assertThat(SensorHold.knocks(marked, RATE_HZ, 9.93)).isFalse();
        assertThat(SensorHold.knocks(marked, RATE_HZ, 11)).isTrue();
        assertThat(SensorHold.knocks(marked, RATE_HZ)).isTrue();
    }

    /** Twenty seconds of noise by a generator of the JDK, of unit size. */
    private static double[] noise() {
        Random chance = new Random(20261129);
        return java.util.stream.IntStream.range(0, (int) (20 * RATE_HZ))
                .mapToDouble(i -> chance.nextGaussian())
                .toArray();
    }

    @Test
    @DisplayName("knocks in most seconds are told, however far the first and the last second stick out nothing is")
    void onlyWhatGoesOnIsAKnock() {
        double[] ends = noise();
        ends[3] = 60;
        ends[ends.length - 4] = -60;
        assertThat(SensorHold.knocks(Series.of(ends), RATE_HZ, 22)).isFalse();

        double[] rattling = noise();
        Random when = new Random(5);
        for (int second = 0; second < 20; second++) {
            rattling[(int) (RATE_HZ * (second + when.nextDouble()))] = 12;
        }
        assertThat(SensorHold.knocks(Series.of(rattling), RATE_HZ, 22)).isTrue();
    }
}
