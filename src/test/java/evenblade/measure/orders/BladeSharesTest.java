package evenblade.measure.orders;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.input.recording.Series;
import evenblade.input.recording.TimeBase;
import evenblade.machine.installation.Engine;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.OrderTable;
import evenblade.machine.installation.Reduction;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedTrack;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** Pulses of known strength and angle, with even noise. */
class BladeSharesTest {
    private static final double RATE = 4000;
    private static final double HZ = 30;
    private static final double SECONDS = 12;

    private static final SpeedTrack STEADY = new SpeedTrack() {
        @Override
        public double fromS() {
            return 0;
        }

        @Override
        public double toS() {
            return SECONDS;
        }

        @Override
        public double revolutionsAt(double t) {
            return HZ * t;
        }

        @Override
        public double propellerHzAt(double t) {
            return HZ;
        }
    };

    /** One Gaussian slope of 1/50 turn for each blade, peak 1, with noise. */
    private static Optional<BladeShares> of(double[] strength, double[] lateDeg, double noise, double onceATurn) {
        return of(strength, lateDeg, noise, onceATurn, 2.43, 0);
    }

    private static OrderTable table(int blades, double ratio) {
        return new Installation(
                        Optional.empty(),
                        new Engine(Engine.Cycle.FOUR_STROKE, 4, OptionalDouble.empty(), OptionalDouble.empty()),
                        new Reduction(Reduction.Kind.UNSTATED, ratio, Optional.empty()),
                        new Installation.Propeller(blades, Optional.empty(), Optional.empty()),
                        List.of())
                .orders();
    }

    private static Optional<BladeShares> of(
            double[] strength, double[] lateDeg, double noise, double onceATurn, double ratio, double firing) {
        int blades = strength.length;
        Random dice = new Random(7);
        double[] x = new double[(int) (RATE * SECONDS)];
        for (int i = 0; i < x.length; i++) {
            double turn = i / RATE * HZ;
            for (int b = 0; b < blades; b++) {
                double u = turn - (double) b / blades - lateDeg[b] / 360;
                u = (u - Math.rint(u)) / 0.02;
                x[i] += strength[b] * u * Math.exp(0.5 - u * u / 2);
            }
            x[i] += onceATurn * Math.cos(2 * Math.PI * turn) + noise * dice.nextGaussian();
            x[i] += firing * Math.cos(2 * Math.PI * 2 * ratio * turn);
        }
        return BladeShares.of(
                new TimeBase.Even(0, RATE, x.length),
                Series.of(x),
                STEADY,
                new Dwell(0, SECONDS, HZ, 0.001, HZ, HZ),
                table(blades, ratio));
    }

    @Test
    @DisplayName("The blade that pushes 6 % more is named, with its strength; a once-a-turn shake moves nothing")
    void theStrongBladeIsNamed() {
        for (double once : new double[] {0, 2}) {
            BladeShares found =
                    of(new double[] {1, 1.06, 1}, new double[3], 0.05, once).orElseThrow();
            assertThat(found.standsOut(true)).contains(1);
            // From the mean of all: +6 % less a third of it.
            BladeShares.Deviation strength = found.shares().get(1).strength();
            assertThat(strength.value())
                    .isBetween(0.04 - 4 * strength.standardError(), 0.04 + 4 * strength.standardError());
            assertThat(strength.standardError()).isLessThan(0.01);
            assertThat(found.shares().get(1).atTurns()).isBetween(0.30, 0.36);
        }
    }

    @Test
    @DisplayName("A blade that comes 1° late is named by its angle")
    void theLateBladeIsNamed() {
        BladeShares found = of(new double[] {1, 1, 1, 1}, new double[] {0, 0, 0, 1}, 0.05, 0)
                .orElseThrow();
        assertThat(found.standsOut(false)).contains(3);
        // From the mean of all: three quarters of a degree; T is smeared by the late blade, hence a tenth of room.
        assertThat(found.shares().get(3).late().value()).isBetween(0.65, 0.85);
    }

    @Test
    @DisplayName("Blades alike: none is named")
    void blandBladesHaveNoName() {
        BladeShares found = of(new double[] {1, 1, 1}, new double[3], 0.05, 1).orElseThrow();
        assertThat(found.standsOut(true)).isEmpty();
        assertThat(found.standsOut(false)).isEmpty();
    }

    @Test
    @DisplayName("Noise alone has no blades")
    void noiseHasNoBlades() {
        assertThat(of(new double[3], new double[3], 0.05, 1)).isEmpty();
    }

    @Test
    @DisplayName("Firing that lies on a whole propeller order names no blade")
    void firingOnAPropellerOrderIsLeftOut() {
        // 2·2.5 = 5, with three blades no blade pass: without a part of its own it makes one pulse in three stronger.
        BladeShares found =
                of(new double[] {1, 1, 1}, new double[3], 0.05, 0, 2.5, 0.2).orElseThrow();
        assertThat(found.standsOut(true)).isEmpty();
        assertThat(found.standsOut(false)).isEmpty();
        BladeShares odd =
                of(new double[] {1, 1.06, 1}, new double[3], 0.05, 0, 2.5, 0.2).orElseThrow();
        assertThat(odd.standsOut(true)).contains(1);
    }

    @Test
    @DisplayName("Orders shared with the crank: 1 always, 5 and not 10 of a 5 to 2 gear with five or three blades")
    void sharedOrders() {
        assertThat(BladeShares.shared(table(3, 2.43), 400)).containsExactly(1);
        assertThat(BladeShares.shared(table(3, 2.5), 400)).containsExactly(1, 5, 10);
        assertThat(BladeShares.shared(table(5, 2.5), 400)).containsExactly(1);
        // 2.4955 may be 2.5 rounded badly: 2·0.0045 is less than a hundredth.
        assertThat(BladeShares.shared(table(3, 2.4955), 4000)).containsExactly(1, 5, 10);
    }

    /** Deviations of three blades: blocks by turns ±1, so that each mean has the same error. */
    private static double[][] steady(int blocks) {
        double[][] off = new double[3][blocks];
        for (int g = 0; g < blocks; g++) {
            double one = g % 2 == 0 ? 1 : -1;
            double other = g / 2 % 2 == 0 ? 1 : -1;
            off[0][g] = one;
            off[1][g] = -one / 2 + other * Math.sqrt(0.75);
            off[2][g] = -off[0][g] - off[1][g];
        }
        return off;
    }

    @Test
    @DisplayName("The errors of all blades are taken together, but for a blade that a bang hit")
    void errorsTogether() {
        double each = Math.sqrt(24 / 23.0 / 24);
        for (BladeShares.Deviation d : BladeShares.deviations(steady(24))) {
            assertThat(d.standardError()).isCloseTo(each, within(1e-9));
        }
        double[][] hit = steady(24);
        hit[1][7] += 20;
        List<BladeShares.Deviation> found = BladeShares.deviations(hit);
        assertThat(found.get(1).value()).isCloseTo(20 / 24.0, within(1e-9));
        // One block of 24 lies 20 off: its mean is 20/24 sure to 20/24.
        assertThat(found.get(1).standardError()).isGreaterThan(0.8);
        assertThat(found.get(0).standardError()).isLessThan(0.6);
    }

    @Test
    @DisplayName("Where blocks hang together, there are fewer of them")
    void blocksThatHangTogether() {
        double[][] slow = new double[3][24];
        for (int g = 0; g < 24; g++) {
            double one = g / 6 % 2 == 0 ? 1 : -1;
            slow[0][g] = one;
            slow[1][g] = -one;
        }
        // Eight triples of ±1 in place of 24 blocks: √(24/8) times the error, but for n − 1.
        double ratio = BladeShares.deviations(slow).get(0).standardError()
                / BladeShares.deviations(steady(24)).get(0).standardError();
        assertThat(ratio).isCloseTo(Math.sqrt(23 / 7.0) * Math.sqrt(2 / 3.0), within(1e-9));
    }
}
