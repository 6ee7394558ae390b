package evenblade.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** The rigid body and its forces against closed forms. */
class ShakingMachineTest {
    private static final Machine MACHINE = Machine.random(3, Machine.Cycle.FOUR_STROKE, 4, Machine.Drive.TEETH, 3);
    private static final double[] CENTRE = {0, 0, 0};
    private static final double[] X = {1, 0, 0};
    private static final double[] Y = {0, 1, 0};
    private static final double[] Z = {0, 0, 1};
    private static final Phasor ONE = new Phasor(1, 0);
    private static final Phasor NONE = Phasor.ZERO;

    /** 80 kg on four mounts in the plane of its centre: 40 kN/m each upward, loss 0.1; bounce at 7.12 Hz. */
    private static Body body() {
        return new Body(
                80,
                3,
                5,
                6,
                List.of(
                        new Body.Mount(0.2, 0.2, 0, 3e4, 3e4, 4e4, 0.1),
                                new Body.Mount(0.2, -0.2, 0, 3e4, 3e4, 4e4, 0.1),
                        new Body.Mount(-0.2, 0.2, 0, 3e4, 3e4, 4e4, 0.1),
                                new Body.Mount(-0.2, -0.2, 0, 3e4, 3e4, 4e4, 0.1)));
    }

    @Test
    void farAboveAllResonancesAForceGivesForceOverMass() {
        Phasor a = body().acceleration(2 * Math.PI * 1000, Body.forceAt(CENTRE, NONE, NONE, ONE), CENTRE, Z);
        assertEquals(1 / 80.0, a.re(), 1e-4 / 80);
        assertEquals(0, a.phaseDeg(), 0.01);
    }

    @Test
    void atItsResonanceABounceIsHeldByLossAloneAndAQuarterTurnLate() {
        double omega = Math.sqrt(4 * 4e4 / 80);
        Phasor a = body().acceleration(omega, Body.forceAt(CENTRE, NONE, NONE, ONE), CENTRE, Z);
        assertEquals(1 / (80 * 0.1), a.amplitude(), 1e-9); // displacement −jF/(kη), acceleration −ω² times that
        assertEquals(90, a.phaseDeg(), 1e-6);
    }

    @Test
    void farBelowResonanceABodyMovesByForceOverStiffness() {
        double omega = 0.01;
        Phasor a = body().acceleration(omega, Body.forceAt(CENTRE, NONE, NONE, ONE), CENTRE, Z);
        assertEquals(1 / 1.6e5 / Math.hypot(1, 0.1), a.amplitude() / omega / omega, 1e-9);
    }

    @Test
    void aMomentMovesPlacesBeforeAndBehindAgainstEachOther() {
        double omega = 2 * Math.PI * 1000;
        Phasor[] yaw = Body.moment(NONE, NONE, ONE);
        Phasor before = body().acceleration(omega, yaw, new double[] {0.3, 0, 0}, Y);
        Phasor behind = body().acceleration(omega, yaw, new double[] {-0.3, 0, 0}, Y);
        assertEquals(0.3 / 6, before.re(), 1e-5);
        assertEquals(-0.3 / 6, behind.re(), 1e-5);
        assertEquals(0, body().acceleration(omega, yaw, CENTRE, X).amplitude(), 1e-9);
    }

    @Test
    void anUnbalancePullsAsTheCheckValueSays() {
        // 500 g·mm at 2400 rpm pulls 31.583 N (checkvalues, section 2; computed from U·ω²)
        PropellerForces sound = PropellerForces.sound(MACHINE, CENTRE, new Dice(1));
        PropellerForces heavy = sound.with(new Fault(Fault.Kind.PROPELLER_MASS, 500e-6, 0.4));
        Phasor across = heavy.at(1, 2400 * MACHINE.ratio())[1].minus(sound.at(1, 2400 * MACHINE.ratio())[1]);
        assertEquals(31.583, across.amplitude(), 0.001);
        assertEquals(Math.toDegrees(0.4), across.phaseDeg(), 1e-6);
    }

    @Test
    void upFollowsAcrossByAQuarterTurnInTheSenseOfRotation() {
        PropellerForces sound = PropellerForces.sound(MACHINE, CENTRE, new Dice(1));
        PropellerForces heavy = sound.with(new Fault(Fault.Kind.PROPELLER_MASS, 1e-3, 0));
        Phasor across = heavy.at(1, 5000)[1].minus(sound.at(1, 5000)[1]);
        Phasor up = heavy.at(1, 5000)[2].minus(sound.at(1, 5000)[2]);
        assertEquals(MACHINE.clockwise() ? 90 : -90, up.over(across).phaseDeg(), 1e-9);
    }

    @Test
    void aBladeOutOfTrackMakesTheCoupleOfItsLeaningPull() {
        PropellerForces sound = PropellerForces.sound(MACHINE, CENTRE, new Dice(1));
        PropellerForces bent = sound.with(new Fault(Fault.Kind.TRACK, 0.006, 0));
        PropellerForces allBent =
                bent.with(new Fault(Fault.Kind.TRACK, 0.006, 1)).with(new Fault(Fault.Kind.TRACK, 0.006, 2));
        double rpm = 4500;
        Phasor couple = bent.at(1, rpm)[5].minus(sound.at(1, rpm)[5]);
        // Blade 0 points right at turn 0; forward of the plane its pull turns the nose to the right: +z, phase 0.
        assertTrue(couple.re() > 0);
        assertEquals(0, couple.phaseDeg(), 1e-6);
        double omega = rpm / MACHINE.ratio() / 60 * 2 * Math.PI;
        assertEquals(bent.trackCouple(omega).minus(sound.trackCouple(omega)).amplitude(), couple.amplitude(), 1e-9);
        // A mean shift of all blades does nothing (the-job: differences do).
        assertEquals(0, allBent.at(1, rpm)[5].minus(sound.at(1, rpm)[5]).amplitude(), 1e-9);
    }

    @Test
    void aLeaningFlangeTracksAtTheTipAsConverted() {
        // 0.05 mm at a 50 mm dial radius is 0.85 mm at an 850 mm tip (the-job, run-out): blades at the high and the low
        // side
        Machine two = new Machine(
                "two", Machine.Cycle.FOUR_STROKE, 4, 1500, 5500, Machine.Drive.TEETH, 2, 20, 40, 2, 2, 1.7, true);
        PropellerForces sound = PropellerForces.sound(two, CENTRE, new Dice(1));
        PropellerForces straight = sound.with(new Fault(Fault.Kind.FLANGE_RUN_OUT, 0, 0));
        PropellerForces leaning = sound.with(new Fault(Fault.Kind.FLANGE_RUN_OUT, 0.05e-3, 0));
        double first = leaning.trackOf(0) - straight.trackOf(0);
        double second = leaning.trackOf(1) - straight.trackOf(1);
        assertEquals(0.85e-3, first - second, 1e-9);
    }

    @Test
    void equalBladesLeaveOnlyMultiplesOfBladePass() {
        Phasor[] inflow = {ONE, new Phasor(0.1, 0), new Phasor(0.05, 0.02), new Phasor(0, 0.04), new Phasor(0.02, 0)};
        PropellerForces equal =
                new PropellerForces(MACHINE, CENTRE, 2, 1500, NONE, new double[3], new double[3], inflow, 0, 0);
        for (int k = 1; k <= 4; k++) {
            double size = 0;
            for (Phasor part : equal.at(k, 5000)) {
                size += part.amplitude();
            }
            assertTrue(k == 3 ? size > 1 : size < 1e-9, "order " + k + ": " + size);
        }
    }

    @Test
    void stiffMountsPeakWhereTheyWereAskedTo() {
        ShakingMachine machine = ShakingMachine.sound(MACHINE, 5).with(new Fault(Fault.Kind.MOUNT_RESONANCE, 0.6, 0));
        double at = MACHINE.maxRpm() * 0.6;
        double peak = strength(machine, at) / at / at;
        double above = strength(machine, at * 1.15) / at / at / 1.15 / 1.15;
        assertTrue(peak > 2 * above, peak + " against " + above);
    }

    private static double strength(ShakingMachine machine, double rpm) {
        double sum = 0;
        for (Axis axis : List.of(Axis.FORWARD, Axis.RIGHT, Axis.UP)) {
            sum += Math.pow(machine.propellerLine(1, rpm, axis).amplitude(), 2);
        }
        return Math.sqrt(sum);
    }

    @Test
    void aRunHoldsTheLineThatTheBodyMakes() {
        ShakingMachine machine = ShakingMachine.sound(MACHINE, 5).with(new Fault(Fault.Kind.TRACK, 0.006, 1));
        GroundRun run =
                machine.rig(6).program(SpeedProgram.still().hold(4200, 20)).make();
        Phasor made = machine.propellerLine(1, 4200, Axis.UP);
        Truth.LineTruth truth =
                run.truth().dwells().get(0).line("up", Shaft.PROPELLER, 1).orElseThrow();
        assertEquals(made.amplitude(), truth.amplitude(), 0.03 * made.amplitude()); // coupling at 2 Hz, 1 % swing
        double[] x = run.samples(2);
        double[] t = run.trueTimes();
        double re = 0;
        double im = 0;
        for (int i = 0; i < x.length; i++) {
            double angle = 2 * Math.PI * run.truth().track().turns(Shaft.PROPELLER, t[i]);
            re += 2 * x[i] * Math.cos(angle) / x.length;
            im -= 2 * x[i] * Math.sin(angle) / x.length;
        }
        assertEquals(truth.amplitude(), Math.hypot(re, im), 0.02 + 0.02 * truth.amplitude()); // noise, ends of the run
        assertEquals(truth.phaseDeg(), new Phasor(re, im).phaseDeg(), 3);
    }
}
