package evenblade.rig;

/**
 * What the propeller does to the engine, line by line of its shaft. Blade b stands at the angle θ + 2πb/B from the right
 * wing towards up (clockwise seen from behind: towards down), so e(θ) = y·cos θ + σ·z·sin θ, as complex vector (0, 1, −jσ).
 *
 * <p>Mass: F = U·ω² along e. Track: M = x × e·Σ m·ω²·r²·δ_b/R·exp(j2πb/B), r the blade's centre of gravity. Thrust T_b of a
 * blade in an uneven inflow with harmonics h_k: along the shaft h_k·ΣT_b·exp(jk2πb/B); its moment e × x at 0.7 R and a quarter
 * of it as drag across. With equal blades only multiples of the blade count are left, as must be.
 */
final class PropellerForces {
    /** Static thrust changes by about 9 % of a blade's share per degree: from memory, order of magnitude. */
    private static final double THRUST_PER_RAD = 0.09 * 180 / Math.PI;

    private static final double STATION = 0.7;
    private static final double DRAG_SHARE = 0.25;
    private static final double DIAL_RADIUS_M = 0.05;

    private final Machine machine;
    private final double[] disc;
    private final double bladeKg;
    private final double thrustAtMaxN;
    private final Phasor unbalance;
    private final double[] trackM;
    private final double[] pitchRad;
    private final Phasor[] inflow;
    private final double tilt;
    private final double tiltAngle;

    PropellerForces(
            Machine machine,
            double[] disc,
            double bladeKg,
            double thrustAtMaxN,
            Phasor unbalance,
            double[] trackM,
            double[] pitchRad,
            Phasor[] inflow,
            double tilt,
            double tiltAngle) {
        this.machine = machine;
        this.disc = disc;
        this.bladeKg = bladeKg;
        this.thrustAtMaxN = thrustAtMaxN;
        this.unbalance = unbalance;
        this.trackM = trackM;
        this.pitchRad = pitchRad;
        this.inflow = inflow;
        this.tilt = tilt;
        this.tiltAngle = tiltAngle;
    }

    static PropellerForces sound(Machine machine, double[] disc, Dice dice) {
        int blades = machine.blades();
        double[] track = new double[blades];
        double[] pitch = new double[blades];
        for (int b = 0; b < blades; b++) {
            track[b] = dice.uniform(-0.0005, 0.0005); // half a millimetre: a pencil's width
            pitch[b] = dice.uniform(-0.0017, 0.0017); // a tenth of a degree
        }
        Phasor[] inflow = new Phasor[3 * blades + 1];
        inflow[0] = new Phasor(1, 0);
        for (int k = 1; k < inflow.length; k++) {
            inflow[k] = Phasor.polar(dice.uniform(0.05, 0.15) / k, dice.angle());
        }
        return new PropellerForces(
                machine,
                disc,
                dice.uniform(4, 7) / blades,
                dice.uniform(1200, 2200),
                Phasor.polar(dice.uniform(0.00002, 0.0001), dice.angle()),
                track,
                pitch,
                inflow,
                dice.uniform(0, 0.00001) / 2 / DIAL_RADIUS_M,
                dice.angle());
    }

    PropellerForces with(Fault fault) {
        double[] track = trackM.clone();
        double[] pitch = pitchRad.clone();
        Phasor mass = unbalance;
        double lean = tilt;
        double leanAngle = tiltAngle;
        switch (fault.kind()) {
            case TRACK -> track[(int) fault.place()] += fault.size();
            case PITCH -> pitch[(int) fault.place()] += fault.size();
            case PROPELLER_MASS -> mass = mass.plus(Phasor.polar(fault.size(), fault.place()));
            case FLANGE_RUN_OUT -> {
                lean = fault.size() / 2 / DIAL_RADIUS_M;
                leanAngle = fault.place();
            }
            default -> {}
        }
        return new PropellerForces(machine, disc, bladeKg, thrustAtMaxN, mass, track, pitch, inflow, lean, leanAngle);
    }

    int highestOrder() {
        return inflow.length - 1;
    }

    /** Tip of a blade forward of the true plane, with what a leaning flange adds: lean·R·cos(angle between). */
    double trackOf(int blade) {
        double angle = 2 * Math.PI * blade / machine.blades();
        return trackM[blade] + tilt * machine.diameterM() / 2 * Math.cos(angle - tiltAngle);
    }

    double pitchOf(int blade) {
        return pitchRad[blade];
    }

    Phasor unbalance() {
        return unbalance;
    }

    /** Size of the couple of the leaning blades at a propeller speed, N·m. */
    Phasor trackCouple(double omega) {
        double radius = machine.diameterM() / 2;
        double cg = 0.35 * radius; // usual for a tapering blade: from memory
        Phasor couple = Phasor.ZERO;
        for (int b = 0; b < trackM.length; b++) {
            double moment = bladeKg * omega * omega * cg * (trackOf(b) * cg / radius);
            couple = couple.plus(Phasor.polar(moment, 2 * Math.PI * b / trackM.length));
        }
        return couple;
    }

    /** Force and moment about the centre of gravity at propeller order k. */
    Phasor[] at(int k, double engineRpm) {
        double omega = engineRpm / 60 / machine.ratio() * 2 * Math.PI;
        double share = engineRpm / machine.maxRpm();
        double sense = machine.clockwise() ? -1 : 1;
        Phasor up = new Phasor(0, -sense);
        Phasor thrust = Phasor.ZERO;
        for (int b = 0; b < pitchRad.length; b++) {
            double own = thrustAtMaxN * share * share / pitchRad.length * (1 + THRUST_PER_RAD * pitchRad[b]);
            thrust = thrust.plus(Phasor.polar(own, k * 2 * Math.PI * b / pitchRad.length));
        }
        Phasor along = thrust.times(inflow[k]);
        Phasor turning = thrust.times(inflow[k - 1]).times(k == 1 ? 1 : 0.5);
        Phasor drag = turning.times(new Phasor(0, -DRAG_SHARE));
        double arm = STATION * machine.diameterM() / 2;
        // e × x = (0, z-part, −y-part) of e = (0, 1, up)
        Phasor[] all = Body.moment(Phasor.ZERO, turning.times(up).times(arm), turning.times(-arm));
        all = Body.sum(all, Body.forceAt(disc, along, drag, drag.times(up)));
        if (k == 1) {
            Phasor pull = unbalance.times(omega * omega);
            all = Body.sum(all, Body.forceAt(disc, Phasor.ZERO, pull, pull.times(up)));
            Phasor couple = trackCouple(omega);
            // x × e = (0, −z-part, y-part)
            all = Body.sum(all, Body.moment(Phasor.ZERO, couple.times(up).times(-1), couple));
        }
        return all;
    }
}
