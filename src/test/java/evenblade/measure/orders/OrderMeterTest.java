package evenblade.measure.orders;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.units.SignalUnit;
import evenblade.input.recording.Channel;
import evenblade.input.recording.Recording;
import evenblade.input.recording.Series;
import evenblade.keep.practice.JitteredClock;
import evenblade.keep.practice.SpeedProfile;
import evenblade.keep.practice.SyntheticRun;
import evenblade.machine.installation.Engine;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.OrderTable;
import evenblade.machine.installation.Reduction;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedDoubt;
import evenblade.measure.speed.SpeedFinder;
import evenblade.measure.speed.SpeedPrior;
import evenblade.measure.speed.SpeedResult;
import evenblade.measure.speed.SpeedTrack;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Amplitudes are those put into the invented run; within 1 % and two standard errors, as the program promises. */
class OrderMeterTest {
    private static final SpeedProfile WANDERING = SpeedProfile.steady(34.2, 20).wandering(0.01, 5);
    private static final Installation GEARED = installation(Engine.Cycle.FOUR_STROKE, 4, 2.43, 3);

    @Test
    void amplitudesHoldThoughTheSpeedWanders() {
        SyntheticRun run = geared();

        DwellOrders dwell = only(run.recording(2400), GEARED);

        for (String name : List.of("propeller 1×", "blade pass", "propeller 4×", "2× blade pass", "firing")) {
            assertTrue(run, dwell, name);
        }
    }

    @Test
    void linesThatAreNotThereAreNotDetected() {
        DwellOrders dwell = only(geared().recording(2400), GEARED);

        assertThat(reading(dwell, "propeller 5×").detected()).isFalse();
        assertThat(reading(dwell, "crank 1½×").detected()).isFalse();
        assertThat(level(dwell, "crank 1½×").ciLow()).isZero();
    }

    @Test
    void jitteredStampsCostNothingBelowFortyTwoPercentOfTheRate() {
        SyntheticRun run = geared();

        DwellOrders dwell = only(run.recording(JitteredClock.jittered(416, 20, 0.0004, 0.01, 4)), GEARED);

        for (OrderReading reading : dwell.readings()) {
            if (reading.detected() && reading.frequencyHz() < 0.42 * 416) {
                double truth = truth(run, dwell, reading);
                Level.Measured level = (Level.Measured) reading.level();
                assertThat(level.amplitude())
                        .as(reading.line().name())
                        .isCloseTo(truth, within(0.02 * truth + 2 * level.standardError()));
            }
        }
        assertThat(reading(dwell, "firing").detected()).isTrue();
    }

    @Test
    void anOrderBeyondTheRangeSaysWhereItFoldsTo() {
        SyntheticRun run =
                SyntheticRun.at(SpeedProfile.steady(34, 20)).withLine(1, 1, 0).withNoise(0.1);

        DwellOrders dwell = known(run, run.recording(JitteredClock.jittered(100, 20, 0.0001, 0, 4)), GEARED);

        // Blade pass at 102 Hz sampled 100 times a second stands at |102 − 100| = 2 Hz.
        OrderReading bladePass = reading(dwell, "blade pass");
        assertThat(bladePass.level()).isInstanceOfSatisfying(Level.Folded.class, folded -> assertThat(folded.toHz())
                .isCloseTo(Math.abs(bladePass.frequencyHz() - 100), within(0.1)));
    }

    /** Crank 3× at 3 · 2.43 · 34 = 247.86 Hz, sampled 417.86 times a second, stands at 170 Hz: propeller 5×. */
    private static final double FOLDING_HZ = 417.86;

    private static SyntheticRun folding() {
        return SyntheticRun.at(SpeedProfile.steady(34, 20))
                .withLine(1, 1, 0)
                .withLine(3, 1, 40)
                .withLine(5, 0.2, 0)
                .withLine(3 * 2.43, 0.5, 80)
                .withNoise(0.1);
    }

    @Test
    void aLineThatFoldsOntoAnOrderIsNamedBesideIt() {
        DwellOrders dwell = only(folding().recording(FOLDING_HZ), GEARED);

        assertThat(reading(dwell, "propeller 5×").inseparableNames()).containsExactly("crank 3×");
        assertThat(reading(dwell, "propeller 1×").inseparableFrom()).isEmpty();
    }

    @Test
    void unevenStampsTellAFoldedLineFromTheOrderItLiesOn() {
        SyntheticRun run = folding();

        DwellOrders dwell = only(run.recording(JitteredClock.jittered(FOLDING_HZ, 20, 0.0004, 0, 4)), GEARED);

        assertThat(reading(dwell, "propeller 5×").inseparableFrom()).isEmpty();
        assertTrue(run, dwell, "propeller 5×");
    }

    /** Blade pass at 99.1 Hz beats with twice a mains frequency; the beat must not pass for the speed's own wander. */
    @Test
    void humNextToBladePassBendsNoOtherLine() {
        SyntheticRun run = SyntheticRun.at(SpeedProfile.steady(33.05, 20).wandering(0.01, 1))
                .withLine(1, 0.5, 10)
                .withLine(3, 1, 20)
                .withLine(2.43, 0.4, 70)
                .withLine(4.86, 0.8, 100)
                .withTone(100, 0.5)
                .withTone(50, 0.3)
                .withNoise(0.05);

        DwellOrders dwell = only(run.recording(2400), GEARED);

        for (String name : List.of("propeller 1×", "crank 1×", "firing")) {
            assertTrue(run, dwell, name);
        }
        assertThat(dwell.unexplained())
                .extracting(line -> (double) Math.round(line.frequencyHz()))
                .contains(50.0, 100.0);
    }

    @Test
    void linesThatCoincideAreReportedTogether() {
        Installation coinciding = installation(Engine.Cycle.TWO_STROKE, 2, 3.0, 3);
        SyntheticRun run = SyntheticRun.at(WANDERING)
                .withLine(1, 0.3, 0)
                .withLine(3, 0.8, 0)
                .withLine(6, 0.4, 0)
                .withNoise(0.3);

        DwellOrders dwell = only(run.recording(2400), coinciding);

        assertThat(reading(dwell, "blade pass").inseparableNames()).containsExactly("crank 1×");
        assertThat(reading(dwell, "crank 1×").inseparableNames()).containsExactly("blade pass");
        assertThat(level(dwell, "crank 1×").amplitude())
                .isEqualTo(level(dwell, "blade pass").amplitude());
    }

    @Test
    void closeLinesSplitOnceTheRunIsLongEnough() {
        // 2.48 crank 2× = 4.96 beside propeller 5×: 1.2 Hz apart at 30 Hz, 1.5 / 1.2 s would do; 0.2 s don't.
        Installation close = installation(Engine.Cycle.FOUR_STROKE, 4, 2.48, 3);
        SyntheticRun run = SyntheticRun.at(SpeedProfile.steady(30, 20).wandering(0.005, 2))
                .withLine(1, 0.5, 0)
                .withLine(3, 1, 30)
                .withLine(5, 0.3, 70)
                .withLine(4.96, 0.6, 200)
                .withNoise(0.3);

        DwellOrders dwell = only(run.recording(2400), close, 30.3);

        assertThat(reading(dwell, "propeller 5×").inseparableFrom()).isEmpty();
        assertThat(level(dwell, "propeller 5×").amplitude()).isCloseTo(0.3, within(0.02));
        assertThat(level(dwell, "firing").amplitude()).isCloseTo(0.6, within(0.02));
    }

    @Test
    void humIsListedAndDoesNotDisturbTheOrderBesideIt() {
        SyntheticRun run = SyntheticRun.at(SpeedProfile.steady(24.8, 25).wandering(0.004, 2))
                .withLine(1, 0.5, 0)
                .withLine(2, 0.3, 0)
                .withLine(3, 1, 30)
                .withTone(50, 0.4)
                .withNoise(0.3);

        DwellOrders dwell = known(run, run.recording(2400), GEARED);

        assertThat(dwell.unexplained()).anySatisfy(line -> {
            assertThat(line.frequencyHz()).isCloseTo(50, within(0.1));
            assertThat(line.amplitude()).isCloseTo(0.4, within(0.04));
            assertThat(line.followsSpeed()).isFalse();
            // In turns of either shaft, the propeller's at 24.8 Hz.
            assertThat(line.propellerOrder()).isCloseTo(50 / 24.8, within(0.02));
            assertThat(line.crankOrder())
                    .isCloseTo(50 / 24.8 / GEARED.reduction().ratio(), within(0.01));
        });
        assertTrue(run, dwell, "propeller 2×");
    }

    @Test
    void gearMeshIsMeasuredWhereTeethAreKnown() {
        Installation toothed = new Installation(
                Optional.empty(),
                GEARED.engine(),
                Reduction.ofTeeth(Reduction.Kind.GEAR, new Reduction.Teeth(21, 51)),
                GEARED.propeller(),
                List.of());
        SyntheticRun run = SyntheticRun.at(WANDERING)
                .withLine(1, 0.5, 0)
                .withLine(3, 1, 30)
                .withLine(51, 0.2, 10)
                .withNoise(0.3);

        DwellOrders dwell = known(run, run.recording(6000), toothed);

        assertThat(level(dwell, "gear mesh").amplitude()).isCloseTo(0.2, within(0.01));
    }

    @Test
    void unevennessIsTheUnevenOrdersOverTheEvenOnes() {
        SyntheticRun run = SyntheticRun.at(WANDERING)
                .withLine(1, 0.3, 0)
                .withLine(2, 0.4, 0)
                .withLine(3, 1, 30)
                .withNoise(0.1);

        DwellOrders.Unevenness unevenness =
                known(run, run.recording(2400), GEARED).unevenness().orElseThrow();

        // √(0.3² + 0.4²) / 1
        assertThat(unevenness.value()).isCloseTo(0.5, within(0.01));
        assertThat(unevenness.ciLow()).isBetween(0.49, unevenness.value());
        assertThat(unevenness.ciHigh()).isBetween(unevenness.value(), 0.51);
    }

    @Test
    void nothingIsMeasuredWhereTheSpeedIsNotConfirmed() {
        Recording noise = SyntheticRun.at(WANDERING).withNoise(1).recording(2400);
        SpeedResult speed = speed(noise, GEARED, 34);

        assertThat(speed.confirmed()).isFalse();
        assertThat(OrderMeter.measure(noise, noise.channels(), GEARED.orders(), speed)
                        .get(0)
                        .dwells())
                .isEmpty();
    }

    /** The speed found, with other dwells. */
    private static SpeedResult withDwells(SpeedResult speed, boolean confirmed, List<Dwell> dwells) {
        return new SpeedResult(
                SpeedResult.Origin.SIGNAL,
                confirmed,
                Optional.empty(),
                speed.track(),
                speed.main(),
                dwells,
                speed.ratioCorrection(),
                List.of());
    }

    @Test
    void dwellsThatBearNoFitAreLeftOutAndSaidAndTheOthersAreMeasured() {
        Recording run = geared().recording(2400);
        SpeedResult speed = speed(run, GEARED, 34);
        Dwell whole = speed.dwells().get(0);
        // 24 samples make eight blocks of three, and a block tells nothing below four.
        Dwell few = new Dwell(5, 5.01, whole.propellerHz(), 0.1, whole.minHz(), whole.maxHz());

        SpeedAndOrders both = SpeedAndOrders.measure(
                run,
                run.channels(),
                GEARED.orders(),
                withDwells(speed, true, List.of(few, whole)),
                SpeedPrior.around(34, 0.05));

        assertThat(both.speed().confirmed()).isTrue();
        assertThat(both.speed().dwells()).containsExactly(whole);
        assertThat(both.channels().get(0).dwells())
                .extracting(DwellOrders::dwell)
                .containsExactly(whole);
        assertThat(both.speed().warnings())
                .extracting(warning -> warning.code().word())
                .containsExactly("dwell-without-figures");
    }

    @Test
    void inADwellOfFewSamplesLinesArePutTogetherUntilTheSamplesTellThemApart() {
        Recording run = geared().recording(2400);
        SpeedResult speed = speed(run, GEARED, 34);
        Dwell whole = speed.dwells().get(0);
        for (double seconds : new double[] {0.015, 0.02, 0.03, 0.05, 0.1, 0.3}) {
            Dwell few = new Dwell(5, 5 + seconds, whole.propellerHz(), 0.1, whole.minHz(), whole.maxHz());
            List<DwellOrders> measured = OrderMeter.measure(
                            run, run.channels(), GEARED.orders(), withDwells(speed, true, List.of(few)))
                    .get(0)
                    .dwells();
            for (DwellOrders dwell : measured) {
                assertThat(dwell.readings()).as(seconds + " s").allSatisfy(reading -> {
                    if (reading.level() instanceof Level.Measured level) {
                        assertThat(level.amplitude()).isFinite();
                        assertThat(level.standardError()).isFinite();
                    }
                });
            }
        }
    }

    @Test
    void aSpeedFromLinesOfWhichNoneIsDetectedIsNotConfirmed() {
        Recording noise = SyntheticRun.at(WANDERING).withNoise(1).recording(2400);
        SpeedResult chance = speed(noise, GEARED, 34);

        SpeedAndOrders both = SpeedAndOrders.measure(
                noise,
                noise.channels(),
                GEARED.orders(),
                withDwells(chance, true, List.of(new Dwell(0, 20, 34, 0.01, 33, 35))),
                SpeedPrior.around(34, 0.05));

        assertThat(both.speed().confirmed()).isFalse();
        assertThat(both.speed().origin()).isEqualTo(SpeedResult.Origin.ENTERED);
        assertThat(both.speed().doubt().orElseThrow().code()).isEqualTo(SpeedDoubt.NOTHING_DETECTED);
        assertThat(both.speed().warnings())
                .extracting(warning -> warning.code().word())
                .containsExactly("speed-not-confirmed");
        assertThat(both.channels().get(0).dwells()).hasSameSizeAs(both.speed().dwells());
    }

    @Test
    void anotherUnitScalesEveryAmplitudeAndNothingElse() {
        Recording one = geared().recording(2400);
        double[] values = one.channels().get(0).values().toArray();
        Recording other = SyntheticRun.recordingOf(
                one.time(),
                List.of(new Channel(
                        "a",
                        SignalUnit.STANDARD_GRAVITY,
                        Series.of(Arrays.stream(values).map(x -> x / 9.80665).toArray()))));

        DwellOrders in = only(one, GEARED);
        DwellOrders scaled = only(other, GEARED);

        assertThat(level(scaled, "blade pass").amplitude() * 9.80665)
                .isCloseTo(level(in, "blade pass").amplitude(), within(1e-5));
        assertThat(scaled.unevenness().orElseThrow().value())
                .isCloseTo(in.unevenness().orElseThrow().value(), within(1e-5));
    }

    private static SyntheticRun geared() {
        return SyntheticRun.at(WANDERING)
                .withLine(1, 0.5, 0)
                .withLine(3, 1, 50)
                .withLine(4, 0.1, 80)
                .withLine(6, 0.4, 10)
                .withLine(4.86, 0.8, 20)
                .withNoise(0.3);
    }

    private static void assertTrue(SyntheticRun run, DwellOrders dwell, String name) {
        Level.Measured level = level(dwell, name);
        double truth = truth(run, dwell, reading(dwell, name));
        assertThat(level.detected()).as(name).isTrue();
        assertThat(level.amplitude()).as(name).isCloseTo(truth, within(0.01 * truth + 2 * level.standardError()));
    }

    private static double truth(SyntheticRun run, DwellOrders dwell, OrderReading reading) {
        return run.truth(
                        reading.line().propellerOrder(),
                        dwell.dwell().fromS(),
                        dwell.dwell().toS())
                .magnitude();
    }

    private static Level.Measured level(DwellOrders dwell, String name) {
        return (Level.Measured) reading(dwell, name).level();
    }

    private static OrderReading reading(DwellOrders dwell, String name) {
        return dwell.readings().stream()
                .filter(r -> r.line().name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static DwellOrders only(Recording recording, Installation installation) {
        return only(recording, installation, 34);
    }

    private static DwellOrders only(Recording recording, Installation installation, double enteredHz) {
        OrderTable table = installation.orders();
        List<DwellOrders> dwells = OrderMeter.measure(
                        recording, recording.channels(), table, speed(recording, installation, enteredHz))
                .get(0)
                .dwells();
        assertThat(dwells).hasSize(1);
        return dwells.get(0);
    }

    /** At the true speed of a run: its lines are too few to find it by. */
    private static DwellOrders known(SyntheticRun run, Recording recording, Installation installation) {
        SpeedProfile speed = run.speed();
        SpeedTrack track = new SpeedTrack() {
            @Override
            public double fromS() {
                return 0;
            }

            @Override
            public double toS() {
                return speed.durationS();
            }

            @Override
            public double revolutionsAt(double timeS) {
                return speed.revolutionsAt(timeS);
            }

            @Override
            public double propellerHzAt(double timeS) {
                return speed.propellerHzAt(timeS);
            }
        };
        double hz = speed.meanHz(0, speed.durationS());
        Dwell dwell = new Dwell(0, speed.durationS(), hz, 1e-4 * hz, 0.99 * hz, 1.01 * hz);
        SpeedResult known = new SpeedResult(
                SpeedResult.Origin.SIGNAL,
                true,
                Optional.empty(),
                track,
                Optional.of(dwell),
                List.of(dwell),
                0,
                List.of());
        return OrderMeter.measure(recording, recording.channels(), installation.orders(), known)
                .get(0)
                .dwells()
                .get(0);
    }

    private static SpeedResult speed(Recording recording, Installation installation, double enteredHz) {
        return SpeedFinder.find(
                recording, recording.channels(), installation.orders(), SpeedPrior.around(enteredHz, 0.05));
    }

    private static Installation installation(Engine.Cycle cycle, int cylinders, double ratio, int blades) {
        return new Installation(
                Optional.empty(),
                new Engine(cycle, cylinders, OptionalDouble.empty(), OptionalDouble.empty()),
                new Reduction(Reduction.Kind.UNSTATED, ratio, Optional.empty()),
                new Installation.Propeller(blades, Optional.empty(), Optional.empty()),
                List.of());
    }

    /** 0.5 inch a second are 12.7 mm/s: every figure of a line goes along, its angle stays. */
    @Test
    void aLineInAnotherUnitKeepsItsAngle() {
        Level.Measured line =
                new Level.Measured(0.5, 0.02, 0.46, 0.54, OptionalDouble.of(40), true, Level.Estimator.COHERENT);
        Level.Measured inMillimetres = line.times(25.4);
        assertThat(inMillimetres.amplitude()).isCloseTo(12.7, within(1e-12));
        assertThat(inMillimetres.standardError()).isCloseTo(0.508, within(1e-12));
        assertThat(inMillimetres.ciLow()).isCloseTo(11.684, within(1e-12));
        assertThat(inMillimetres.ciHigh()).isCloseTo(13.716, within(1e-12));
        assertThat(inMillimetres.phaseDeg()).hasValue(40);
    }
}
