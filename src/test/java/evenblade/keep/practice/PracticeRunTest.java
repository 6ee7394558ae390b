package evenblade.keep.practice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.problem.BadInput;
import evenblade.input.recording.TimeBase;
import evenblade.machine.installation.Engine.Cycle;
import evenblade.machine.installation.Installation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class PracticeRunTest {
    private static final Installation GEARED = Installations.gearedThreeBlade();
    private static final double RATIO = GEARED.reduction().ratio();
    private static final PracticeRun EVEN =
            PracticeRun.of(Installations.even(GEARED)).at(4800);

    @Test
    void aHeavyBladeShakesAcrossTheShaftMoreThanAlong() {
        PracticeRun heavy = EVEN.withFault(Fault.MASS_IMBALANCE);
        assertThat(once(heavy, SensorAxis.ACROSS)).isGreaterThan(2 * once(heavy, SensorAxis.ALONG));
    }

    @ParameterizedTest
    @EnumSource(
            value = Fault.class,
            names = {"BLADE_OUT_OF_TRACK", "BLADE_OUT_OF_PITCH", "FLANGE_RUN_OUT"})
    void aBladeOutOfTrackOrPitchShakesAlongTheShaftMoreThanAcross(Fault fault) {
        PracticeRun run = EVEN.withFault(fault);
        assertThat(once(run, SensorAxis.ALONG)).isGreaterThan(1.5 * once(run, SensorAxis.ACROSS));
    }

    @Test
    void imbalanceGrowsWithTheSquareOfSpeedWellAboveTheMounts() {
        PracticeRun heavy = EVEN.withFault(Fault.MASS_IMBALANCE);
        double slow = once(heavy.at(4000), SensorAxis.ACROSS);
        double fast = once(heavy.at(5600), SensorAxis.ACROSS);
        // Soft mounts near 9 Hz still add a few percent at 27 Hz.
        assertThat(fast / slow).isCloseTo(1.4 * 1.4, within(0.1));
    }

    @Test
    void aResonanceOfTheMountPeaksAtItsSpeedAndFallsAboveIt() {
        PracticeRun heavy = EVEN.withFault(Fault.MASS_IMBALANCE).withFault(Fault.MOUNT_RESONANCE);
        double at30Hz = once(heavy.at(30 * 60 * RATIO), SensorAxis.ACROSS);
        assertThat(at30Hz).isGreaterThan(3 * once(heavy.at(24 * 60 * RATIO), SensorAxis.ACROSS));
        assertThat(at30Hz).isGreaterThan(2 * once(heavy.at(36 * 60 * RATIO), SensorAxis.ACROSS));
    }

    @Test
    void aWeakCylinderOfAFourStrokeShowsAtHalfTheCrankSpeed() {
        PracticeRun weak = EVEN.withFault(Fault.WEAK_CYLINDER);
        assertThat(level(EVEN, SensorAxis.ACROSS, 0.5 * RATIO)).isLessThan(1e-9);
        assertThat(level(weak, SensorAxis.ACROSS, 0.5 * RATIO)).isGreaterThan(0.2);
    }

    @Test
    void aWeakCylinderOfATwoStrokeTwinShowsAtCrankSpeed() {
        PracticeRun twin = PracticeRun.of(Installations.even(Installations.geared(Cycle.TWO_STROKE, 2, 3)))
                .at(4800);
        double before = level(twin, SensorAxis.ACROSS, RATIO);
        assertThat(level(twin.withFault(Fault.WEAK_CYLINDER), SensorAxis.ACROSS, RATIO))
                .isGreaterThan(before + 0.2);
        assertThat(level(twin, SensorAxis.ACROSS, 0.5 * RATIO)).isEqualTo(0);
    }

    @Test
    void carburettorsOutOfStepShowAtCrankSpeedAndNotAtHalf() {
        PracticeRun uneven = EVEN.withFault(Fault.CARBURETTORS_OUT_OF_STEP);
        assertThat(level(uneven, SensorAxis.ACROSS, 0.5 * RATIO)).isLessThan(1e-9);
        assertThat(level(uneven, SensorAxis.ACROSS, RATIO)).isGreaterThan(level(EVEN, SensorAxis.ACROSS, RATIO) + 0.2);
    }

    @Test
    void anElectricMotorHasNoFiringAndRefusesAWeakCylinder() {
        PracticeRun motor = PracticeRun.of(Installations.direct(Cycle.ELECTRIC, 0, 5));
        assertThat(motor.felt(SensorAxis.ACROSS).lines())
                .extracting(Line::propellerOrder)
                .allMatch(order -> order == Math.rint(order));
        assertThatThrownBy(() -> motor.withFault(Fault.WEAK_CYLINDER))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("weak-cylinder")
                .hasMessageContaining("electric");
    }

    @Test
    void aLooseMountRattlesInHalvesAndAWornGearGrowsSideLines() {
        assertThat(level(EVEN.withFault(Fault.LOOSE_MOUNT), SensorAxis.UP, 0.5)).isGreaterThan(0.1);
        PracticeRun worn = EVEN.withFault(Fault.GEAR);
        assertThat(level(worn, SensorAxis.UP, 52)).isCloseTo(0.25 * level(worn, SensorAxis.UP, 51), within(1e-9));
        assertThat(level(EVEN, SensorAxis.UP, 52)).isEqualTo(0);
    }

    @Test
    void onlyBladePassAndFiringAreHeardOfAnEvenMachine() {
        SyntheticRun heard = LaptopMicrophone.heard(EVEN, 80);
        assertThat(heard.truth(1, 0, 30).magnitude()).isLessThan(1e-12);
        assertThat(heard.truth(3, 0, 30).magnitude()).isGreaterThan(0.3);
        assertThat(heard.truth(2 * RATIO, 0, 30).magnitude()).isGreaterThan(0.3);
        SyntheticRun uneven = LaptopMicrophone.heard(EVEN.withFault(Fault.BLADE_OUT_OF_PITCH), 80);
        assertThat(uneven.truth(1, 0, 30).magnitude()).isGreaterThan(0.01);
    }

    @Test
    void truthOfALineThatChangesWithSpeedIsWhatIsInTheSamples() {
        PracticeRun run = PracticeRun.of(GEARED)
                .withFault(Fault.MASS_IMBALANCE)
                .at(4800)
                .wandering(0.01)
                .withNoise(Noise.NONE);
        SyntheticRun felt = run.felt(SensorAxis.ACROSS);
        TimeBase time = felt.evenClock(2000);
        double[] samples = felt.samples(time);
        for (double order : new double[] {1, 3, RATIO, 2 * RATIO}) {
            FoundAndTrue both = new FoundAndTrue(
                    Projection.of(samples, time, run.trueSpeed(), order, 0, 30).magnitude(),
                    felt.truth(order, 0, 30).magnitude());
            // The projection's window weighs the middle of the run more; speed there differs by under 1 %.
            assertThat(both.found()).isCloseTo(both.truth(), within(0.02 * both.truth() + 1e-4));
        }
    }

    @Test
    void aRunIsTheSameForTheSameSeed() {
        PracticeRun run = PracticeRun.of(GEARED).forSeconds(3).wandering(0.01);
        assertThat(run.seeded(5).recording(500).channels().get(1).values().toArray())
                .isEqualTo(
                        run.seeded(5).recording(500).channels().get(1).values().toArray())
                .isNotEqualTo(
                        run.seeded(6).recording(500).channels().get(1).values().toArray());
    }

    @Test
    void anUnknownFaultIsRefusedWithTheKnownOnes() {
        assertThat(Fault.named("gear")).isEqualTo(Fault.GEAR);
        assertThatThrownBy(() -> Fault.named("gears"))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("'gears'")
                .hasMessageContaining("mass-imbalance");
    }

    private record FoundAndTrue(double found, double truth) {}

    private static double once(PracticeRun run, SensorAxis axis) {
        return level(run, axis, 1);
    }

    private static double level(PracticeRun run, SensorAxis axis, double propellerOrder) {
        return run.felt(axis).truth(propellerOrder, 0, 30).magnitude();
    }
}
