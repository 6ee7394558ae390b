package evenblade.measure.orders;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.input.recording.Series;
import evenblade.measure.orders.SteadyTones.Found;
import evenblade.measure.orders.SteadyTones.Known;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedTrack;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** Tones of known frequency and amplitude in noise of 0.05, 20 s at 400 Hz; the chance is seeded. */
@DisplayName("Steady lines that no order explains")
class SteadyTonesTest {
    private static final double RATE_HZ = 400;
    private static final int SIZE = 8000;
    /** A bin is 0.195 Hz; the middle of five bins is off by a tenth of one, noise and the window's shape together. */
    private static final double PLACE_HZ = 0.03;
    /** Five bins hold all but a thousandth of a tone under Hann's window; noise beside it some per cent. */
    private static final double SHARE = 0.04;

    /** From 1.5 s on; 20 Hz that wander by ±2 % every five seconds. */
    private static final SpeedTrack WANDERING = track(0.02);

    private static SpeedTrack track(double wander) {
        double w = 2 * Math.PI / 5;
        return new SpeedTrack() {
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
                return 20 * (t - wander * Math.cos(w * t) / w);
            }

            @Override
            public double propellerHzAt(double t) {
                return 20 * (1 + wander * Math.sin(w * t));
            }
        };
    }

    private static Series samples(DoubleUnaryOperator tones) {
        Random dice = new Random(5);
        double[] x = new double[SIZE];
        for (int i = 0; i < SIZE; i++) {
            x[i] = tones.applyAsDouble(1.5 + i / RATE_HZ) + 0.05 * dice.nextGaussian();
        }
        return Series.of(x);
    }

    private static List<Found> search(double wander, DoubleUnaryOperator tones, List<Known> known) {
        Dwell dwell = new Dwell(1.5, 21.5, 20, 0.001, 20 * (1 - wander), 20 * (1 + wander));
        return new SteadyTones(dwell, track(wander), RATE_HZ).search(samples(tones), known, 160);
    }

    private static double wave(double amplitude, double turns) {
        return amplitude * Math.cos(2 * Math.PI * turns);
    }

    @Test
    @DisplayName("tones are found with their places and sizes, the strongest first")
    void tones() {
        List<Found> found = search(0, t -> wave(0.2, 57.3 * t) + wave(0.4, 111.13 * t), List.of());
        assertThat(found).hasSize(2);
        assertThat(found.get(0).frequencyHz()).isCloseTo(111.13, within(PLACE_HZ));
        assertThat(found.get(0).amplitude()).isCloseTo(0.4, within(SHARE * 0.4));
        assertThat(found.get(1).frequencyHz()).isCloseTo(57.3, within(PLACE_HZ));
        assertThat(found.get(1).amplitude()).isCloseTo(0.2, within(SHARE * 0.2));
        assertThat(found).noneMatch(Found::followsSpeed);
    }

    @Test
    @DisplayName("noise has none, and neither what lies below 4 Hz or above the range")
    void none() {
        assertThat(search(0, t -> 0, List.of())).isEmpty();
        assertThat(search(0, t -> wave(0.4, 2.5 * t) + wave(0.4, 171 * t), List.of()))
                .isEmpty();
    }

    /** 20 s resolve 1.5/20 Hz; a strong line hides what is under 5 % of it within 0.8 Hz, or 1 % of its place. */
    @Test
    @DisplayName("what belongs to a line of the fit is left to it")
    void known() {
        DoubleUnaryOperator tone = t -> wave(0.2, 57.3 * t);
        assertThat(search(0, tone, List.of(new Known(57.34, 0.1)))).isEmpty();
        assertThat(search(0, tone, List.of(new Known(57.46, 0.1)))).hasSize(1);
        assertThat(search(0, tone, List.of(new Known(57.9, 4.5)))).isEmpty();
        assertThat(search(0, tone, List.of(new Known(57.9, 3.5)))).hasSize(1);
        assertThat(search(0, tone, List.of(new Known(58.6, 4.5)))).hasSize(1);
        DoubleUnaryOperator high = t -> wave(0.2, 131 * t);
        assertThat(search(0, high, List.of(new Known(132.2, 4.5)))).isEmpty();
        assertThat(search(0, high, List.of(new Known(132.5, 4.5)))).hasSize(1);
    }

    /** Where the speed wanders by 2 % either way a line at 2.7 times it smears over 2 Hz, but stands over angle. */
    @Test
    @DisplayName("a line that keeps step is told from a tone that stands")
    void following() {
        List<Found> found =
                search(0.02, t -> wave(0.4, 2.7 * WANDERING.revolutionsAt(t)) + wave(0.2, 111.13 * t), List.of());
        assertThat(found).hasSizeGreaterThanOrEqualTo(2);
        // Over angle the tone smears, and what is left of it beside its place is small.
        assertThat(found.subList(2, found.size())).allMatch(f -> f.amplitude() < 0.05 * 0.2);
        assertThat(found.get(0).followsSpeed()).isTrue();
        assertThat(found.get(0).frequencyHz()).isCloseTo(54, within(2 * PLACE_HZ));
        // Straight lines between samples, 7 to a period, leave 1 − (π/7.4)²/6 or so of it, some 4 % less.
        assertThat(found.get(0).amplitude()).isBetween(0.36, 0.41);
        assertThat(found.get(1).followsSpeed()).isFalse();
        assertThat(found.get(1).frequencyHz()).isCloseTo(111.13, within(PLACE_HZ));
        assertThat(found.get(1).amplitude()).isCloseTo(0.2, within(SHARE * 0.2));
    }

    @Test
    @DisplayName("above the orders the signal itself is looked through, from and up to where it is said")
    void above() {
        Series samples = samples(t -> wave(0.3, 90 * t) + wave(0.3, 120 * t) + wave(0.3, 150 * t));
        List<Found> found = SteadyTones.above(samples, RATE_HZ, 100, 140);
        assertThat(found).singleElement().satisfies(f -> {
            assertThat(f.frequencyHz()).isCloseTo(120, within(PLACE_HZ));
            assertThat(f.amplitude()).isCloseTo(0.3, within(SHARE * 0.3));
        });
        assertThat(SteadyTones.above(samples, RATE_HZ, 140, 140)).isEmpty();
        // Under two seconds there is nothing to be said.
        assertThat(SteadyTones.above(Series.of(java.util.Arrays.copyOf(samples.toArray(), 780)), RATE_HZ, 100, 140))
                .isEmpty();
        assertThat(SteadyTones.above(Series.of(java.util.Arrays.copyOf(samples.toArray(), 820)), RATE_HZ, 100, 140))
                .hasSize(1);
    }

    private static Found peak(double hz, double amplitude, double height) {
        return new Found(hz, amplitude, height, false);
    }

    private static List<Found> gathered(double wander, Found... found) {
        Dwell dwell = new Dwell(1.5, 21.5, 20, 0.001, 20 * (1 - wander), 20 * (1 + wander));
        return new SteadyTones(dwell, track(wander), RATE_HZ).gathered(List.of(found), 2.43);
    }

    /** Order 9 of 20 Hz ± 2 % lies anywhere from 176.4 to 183.6 Hz; √(3² + 4²) = 5, at (9·178 + 16·182)/25 = 180.56 Hz. */
    @Test
    @DisplayName("several peaks within the reach of one order are one smeared line")
    void smears() {
        List<Found> found = gathered(0.02, peak(182, 4, 7), peak(178, 3, 8), peak(150, 1, 1));
        assertThat(found).hasSize(2);
        assertThat(found.get(0).smeared()).isTrue();
        assertThat(found.get(0).amplitude()).isCloseTo(5, within(1e-12));
        assertThat(found.get(0).frequencyHz()).isCloseTo(180.56, within(1e-9));
        assertThat(found.get(0).height()).isEqualTo(8);
        assertThat(found.get(1)).isEqualTo(peak(150, 1, 1));
    }

    @Test
    @DisplayName("a single peak, a line in step, and tones where the speed stands stay as they are")
    void noSmears() {
        Found inStep = new Found(181, 2, 2, true);
        assertThat(gathered(0.02, peak(178, 3, 8), inStep)).containsExactly(peak(178, 3, 8), inStep);
        assertThat(gathered(0, peak(182, 4, 7), peak(178, 3, 8))).containsExactly(peak(182, 4, 7), peak(178, 3, 8));
    }

    /** Crank ½× lies at 24.3 Hz ± 2 %, and six times it at 142.9 to 148.7 Hz, between propeller orders 7 and 8. */
    @Test
    @DisplayName("halves of the crank's speed smear too")
    void smearsOfTheCrank() {
        assertThat(gathered(0.02, peak(144, 4, 7), peak(148, 3, 8))).hasSize(1);
    }
}
