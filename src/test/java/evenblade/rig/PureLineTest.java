package evenblade.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Physics of the rig in closed form: one line, one level, one angle. */
class PureLineTest {
    private static final Machine MACHINE = Machine.random(3, Machine.Cycle.FOUR_STROKE, 4, Machine.Drive.TEETH, 3);

    private static LineSource one(LineId id, double amplitude, double phaseRad) {
        return LineSource.line(id.shaft(), id.order(), amplitude, Math.toDegrees(phaseRad), 0);
    }

    private static Rig quiet(double engineRpm, double seconds) {
        return Rig.of(MACHINE, 5)
                .program(SpeedProgram.still().hold(engineRpm, seconds))
                .sensors(Sensor.accelerometer("up", Axis.UP).with(Floor.NONE));
    }

    /** Twice the mean of x·exp(−j·2π·order·turns) is the line's complex amplitude. */
    private static Phasor measured(GroundRun run, LineId id) {
        double[] x = run.samples(0);
        double[] t = run.trueTimes();
        double re = 0;
        double im = 0;
        for (int i = 0; i < x.length; i++) {
            double angle = 2 * Math.PI * id.order() * run.truth().track().turns(id.shaft(), t[i]);
            re += 2 * x[i] * Math.cos(angle) / x.length;
            im -= 2 * x[i] * Math.sin(angle) / x.length;
        }
        return new Phasor(re, im);
    }

    @Test
    void aLineHasItsAmplitudeAndPhaseWithWanderingSpeed() {
        LineId id = new LineId(Shaft.PROPELLER, 3);
        GroundRun run = quiet(4000, 60)
                .program(SpeedProgram.still().hold(4000, 60).wandering(0.01, 4))
                .sources(one(id, 2.5, 0.7))
                .make();
        Truth.LineTruth truth =
                run.truth().dwells().get(0).line("up", Shaft.PROPELLER, 3).orElseThrow();
        // The accelerometer's 2 Hz coupling takes (2/f)²/2 and turns the phase by 2/f rad: f is about 100 Hz.
        assertEquals(2.5, truth.amplitude(), 2.5 * 3e-4);
        assertEquals(0.7 + 2 / truth.frequencyHz(), Math.toRadians(truth.phaseDeg()), 1e-3);
        // The rest of a cycle at the ends leaves 1/(2π·f·T), twice: under 1e-4.
        assertEquals(truth.amplitude(), measured(run, id).amplitude(), 2.5 * 1e-4);
        assertEquals(truth.phaseDeg(), measured(run, id).phaseDeg(), 0.01);
    }

    @Test
    void theSpectrumOfAPureLineHoldsItsPower() {
        GroundRun run =
                quiet(3000, 20).sources(one(new LineId(Shaft.CRANK, 2), 2, 0)).make(); // 100 Hz
        assertEquals(2.0, Spectra.powerBelow(run.samples(0), 8000, 400), 2 * 1e-3); // A²/2
        assertEquals(0.0, Spectra.powerBelow(run.samples(0), 8000, 80), 2 * 1e-2); // its skirt only
    }

    @Test
    void whiteNoiseBelowAQuarterOfHalfTheRateHoldsAQuarterOfItsPower() {
        double[] x = new double[1 << 17];
        Floor.white(3).addTo(x, 8000, new Dice(1));
        assertEquals(9.0 / 4, Spectra.powerBelow(x, 8000, 1000), 0.05); // chance: 2.25·sqrt(2/32768) = 0.02
    }

    @Test
    void fallingNoiseHasItsDensity() {
        double[] x = new double[1 << 18];
        Floor floor = new Floor(0, 1, 2);
        floor.addTo(x, 16000, new Dice(2));
        double expected = 0;
        for (double f = 40.5; f < 200; f++) {
            expected += floor.density(f, 16000);
        }
        double got = Spectra.powerBelow(x, 16000, 200) - Spectra.powerBelow(x, 16000, 40);
        assertEquals(expected, got, 0.08 * expected); // chance: sqrt(1/2600) = 2 %
    }

    @Test
    void aSoundLiesBehindTheMachineAtItsLevel() {
        double[] noise = new double[16000 * 7];
        Floor.white(0.1).addTo(noise, 16000, new Dice(4));
        Rig rig = quiet(3000, 10).sampling(Sampling.even(16000)).sources(one(new LineId(Shaft.CRANK, 2), 0.5, 0));
        double[] alone = rig.make().samples(0);
        double[] mixed = rig.with(new Background("noise", 16000, noise).behind(-6))
                .make()
                .samples(0);
        for (int i = 0; i < mixed.length; i++) {
            mixed[i] -= alone[i];
        }
        double ratio = Spectra.powerBelow(alone, 16000, 400) / Spectra.powerBelow(mixed, 16000, 400);
        assertEquals(-6, 10 * Math.log10(ratio), 1e-6);
    }

    @Test
    void equalCylindersLeaveOnlyFiringAndAWeakOneHalfOrder() {
        Combustion equal = new Combustion(MACHINE, new double[] {1, 1, 1, 1}, 0, (o, r, a) -> new Phasor(1, 0), 8);
        assertEquals(0, equal.cylinderSum(0.5).amplitude(), 1e-12);
        assertEquals(0, equal.cylinderSum(1).amplitude(), 1e-12);
        assertEquals(4, equal.cylinderSum(2).amplitude(), 1e-12);
        Combustion weak = new Combustion(MACHINE, new double[] {1, 1, 0.7, 1}, 0, (o, r, a) -> new Phasor(1, 0), 8);
        assertEquals(0.3, weak.cylinderSum(0.5).amplitude(), 1e-12);
        assertEquals(3.7, weak.cylinderSum(2).amplitude(), 1e-12);
    }

    @Test
    void marksPassHalfHeightAtWholeTurns() {
        GroundRun run = quiet(4000, 10)
                .program(SpeedProgram.still().hold(4000, 10).wandering(0.01, 4))
                .sensors(Sensor.mark("mark", Shaft.PROPELLER).with(Floor.NONE))
                .make();
        double[] x = run.samples(0);
        double[] t = run.trueTimes();
        int pulses = 0;
        for (int i = 1; i < x.length; i++) {
            if (x[i - 1] < 0.3 && x[i] >= 0.3) {
                double turns = run.truth().track().turns(Shaft.PROPELLER, t[i]);
                pulses++;
                assertTrue(turns - Math.floor(turns) < 4000 / 60.0 / MACHINE.ratio() / 8000 + 1e-9);
            }
        }
        double turned = run.truth().track().turns(Shaft.PROPELLER, 10)
                - run.truth().track().turns(Shaft.PROPELLER, 0);
        assertEquals(turned, pulses, 1);
    }

    @Test
    void dwellsAndRampsAreWhereTheProgramPutsThem() {
        GroundRun run = quiet(3000, 1)
                .program(SpeedProgram.still().hold(3000, 10).rampTo(4000, 2).drifting(4000, 20, 0.05))
                .make();
        List<Truth.Dwell> dwells = run.truth().dwells();
        assertEquals(2, dwells.size());
        assertEquals(3000, dwells.get(0).engineRpm(), 1e-6);
        assertEquals(12, dwells.get(1).fromS(), 1e-9);
        assertEquals(4100, dwells.get(1).engineRpm(), 1);
        assertEquals(3500, run.truth().engineRpm(11), 5);
        assertEquals(4200, run.truth().engineRpm(31.99), 2);
        assertEquals(4100 / MACHINE.ratio(), dwells.get(1).propellerRpm(), 1);
    }

    @Test
    void twoMakingsOfOneSeedAreAlikeAndOfAnotherAreNot() {
        double[] a = Rig.random(9).make().samples(0);
        double[] b = Rig.random(9).make().samples(0);
        double[] c = Rig.random(9).runSeed(10).make().samples(0);
        org.junit.jupiter.api.Assertions.assertArrayEquals(a, b);
        assertTrue(a[100] != c[100]);
    }
}
