package evenblade.keep.practice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.numeric.Phasor;
import evenblade.machine.installation.Engine;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RotorForcesTest {
    private static final Machine EVEN = Installations.even(Installations.gearedThreeBlade());

    @Test
    void fiveHundredGramMillimetresAt2400RpmPull31583Millinewtons() {
        // F = U·ω²: 500 g·mm at 2400 rpm is 31.583 N, computed from the definition.
        double grams = 0.5 / EVEN.blades().get(0).centreOfGravityM() / 1000;
        Machine heavy = EVEN.withBlade(1, EVEN.blades().get(0).heavierBy(grams));
        double omega = 2 * Math.PI * 2400 / 60;
        RotorForces.Order once = RotorForces.of(heavy).get(0);
        assertThat(once.acrossN().magnitude() * omega * omega).isCloseTo(31.583, within(0.0005));
        assertThat(once.upN().magnitude() * omega * omega).isCloseTo(31.583, within(0.0005));
        assertThat(once.alongN().magnitude()).isCloseTo(0, within(1e-15));
        // Blade 1 points level when the mark passes, upright a quarter turn later.
        assertThat(once.acrossN().degrees() % 360).isCloseTo(0, within(1e-6));
        assertThat(once.upN().degrees()).isCloseTo(270, within(1e-6));
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 3, 4, 5, 6})
    void bladesThatAreAlikeMakeOnlyBladePass(int count) {
        Machine even = Installations.even(Installations.geared(Engine.Cycle.FOUR_STROKE, 4, count));
        double largest = 0;
        for (RotorForces.Order order : RotorForces.of(even)) {
            for (Phasor pull : pulls(order)) {
                if (order.order() % count == 0) {
                    largest = Math.max(largest, pull.magnitude());
                } else {
                    assertThat(pull.magnitude()).as("order %d", order.order()).isLessThan(1e-14);
                }
            }
        }
        assertThat(largest).isGreaterThan(1e-6);
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 3, 4, 6})
    void aMeanShiftOfAllTipsDoesNothing(int count) {
        Machine even = Installations.even(Installations.geared(Engine.Cycle.FOUR_STROKE, 4, count));
        Machine shifted =
                even.withBlades(even.blades().stream().map(b -> b.ahead(0.005)).toList());
        assertThat(RotorForces.of(shifted).get(0).tiltUpNm().magnitude()).isCloseTo(0, within(1e-13));
    }

    @Test
    void tipsOutOfTrackAddTheirMomentsAsVectors() {
        double[] tracks = {0.004, -0.001, 0.002};
        List<Blade> blades = Stream.of(0, 1, 2)
                .map(i -> EVEN.blades().get(i).ahead(tracks[i]))
                .toList();
        // M = |Σ m·r_cg·(δ_p·r_cg/R)·e^{jθ_p}| at 1 rad/s, summed here by hand.
        double each = 1.2 * 0.34 * 0.34 / 0.85;
        double re = each * (0.004 + 0.001 * 0.5 - 0.002 * 0.5);
        double im = each * (-0.001 - 0.002) * Math.sqrt(3) / 2;
        assertThat(RotorForces.of(EVEN.withBlades(blades)).get(0).tiltUpNm().magnitude())
                .isCloseTo(Math.hypot(re, im), within(1e-12));
    }

    @Test
    void aSmallRunOutOfTheFlangeIsNotSmallAtTheTip() {
        // TIR × R / r_dial: 0.05 mm at a dial radius of 50 mm is 0.85 mm at an 850 mm tip.
        InventedRunOut runOut = new InventedRunOut(0.05e-3, 0.05, 0);
        assertThat(runOut.atTipM(0.85)).isCloseTo(0.85e-3, within(1e-12));
        Machine machine = Installations.even(Installations.geared(Engine.Cycle.FOUR_STROKE, 4, 2))
                .withRunOut(runOut);
        assertThat(machine.trackAtM(1) - machine.trackAtM(2)).isCloseTo(0.85e-3, within(1e-12));
    }

    @Test
    void runOutStaysWithThePositionWhenBladesMove() {
        Machine machine = EVEN.withRunOut(new InventedRunOut(0.2e-3, 0.05, 120))
                .withBlade(1, EVEN.blades().get(0).ahead(0.003));
        Machine moved = machine.withBladesAt(List.of("B", "C", "A"));
        assertThat(moved.trackAtM(2)).isEqualTo(machine.trackAtM(2));
        assertThat(moved.trackAtM(3) - machine.trackAtM(3)).isCloseTo(0.003, within(1e-12));
    }

    @Test
    void aCoarserBladeLoadsTheShaftOnceARevolutionAndNotItsBalance() {
        Machine coarse = EVEN.withBlade(2, EVEN.blades().get(1).coarser(1));
        RotorForces.Order once = RotorForces.of(coarse).get(0);
        // 9 % more thrust on one blade of three at 0.7 R; mean pitch is a third of a degree up.
        double moment = 0.09 * RotorForces.evenBladeThrustN(coarse) * 0.7 * 0.85;
        assertThat(once.tiltUpNm().magnitude()).isCloseTo(moment, within(0.15 * moment));
        double omega = 2 * Math.PI * Machine.REFERENCE_HZ;
        assertThat(once.acrossN().magnitude() * omega * omega).isLessThan(10);
    }

    private static List<Phasor> pulls(RotorForces.Order order) {
        return List.of(order.alongN(), order.acrossN(), order.upN(), order.tiltAcrossNm(), order.tiltUpNm());
    }
}
