package evenblade.rig;

/**
 * What the engine and its drive do to the whole body. Gas torque of one cylinder turns the body about the shaft: line m
 * of the crank has T_mean·2·exp(−0.35·(m − ½)) (a rough fit to a single cylinder's tangential pressure: from memory), and
 * some lift in step with it. Crank unbalance: U·ω² across the crank, against the propeller's sense where gears turn it
 * round. Crank 2×: what the pistons leave, m·r·(r/l)·ω² upward.
 */
final class EngineForces {
    private final Machine machine;
    private final double[] front;
    private final double[] mesh;
    private final double torqueAtMaxNm;
    private final double liftPerTorque;
    private final Phasor crankUnbalance;
    private final Phasor pistons;
    private final double[] strength;
    private final double cycleVariation;
    private final double modulation;
    private final boolean drivenWheel;
    private final double looseness;
    private final int looseMount;

    private EngineForces(
            Machine machine,
            double[] front,
            double[] mesh,
            double torqueAtMaxNm,
            double liftPerTorque,
            Phasor crankUnbalance,
            Phasor pistons,
            double[] strength,
            double cycleVariation,
            double modulation,
            boolean drivenWheel,
            double looseness,
            int looseMount) {
        this.machine = machine;
        this.front = front;
        this.mesh = mesh;
        this.torqueAtMaxNm = torqueAtMaxNm;
        this.liftPerTorque = liftPerTorque;
        this.crankUnbalance = crankUnbalance;
        this.pistons = pistons;
        this.strength = strength;
        this.cycleVariation = cycleVariation;
        this.modulation = modulation;
        this.drivenWheel = drivenWheel;
        this.looseness = looseness;
        this.looseMount = looseMount;
    }

    static EngineForces sound(Machine machine, double[] crank, double[] mesh, Dice dice) {
        double[] strength = new double[machine.cycle() == Machine.Cycle.ELECTRIC ? 0 : machine.cylinders()];
        for (int c = 0; c < strength.length; c++) {
            strength[c] = 1 + 0.02 * dice.normal(); // cylinders of a sound engine: some 2 %, from memory
        }
        double perCylinder = dice.uniform(18, 32);
        return new EngineForces(
                machine,
                crank,
                mesh,
                perCylinder,
                dice.uniform(0.5, 2),
                Phasor.polar(dice.uniform(0.00001, 0.00004), dice.angle()),
                Phasor.polar(dice.uniform(0.00002, 0.00015), dice.angle()),
                strength,
                dice.uniform(0.02, 0.06),
                dice.uniform(0.02, 0.08),
                true,
                0,
                0);
    }

    EngineForces with(Fault fault) {
        double[] s = strength.clone();
        Phasor crank = crankUnbalance;
        double mod = modulation;
        boolean driven = drivenWheel;
        double loose = looseness;
        int mount = looseMount;
        switch (fault.kind()) {
            case WEAK_CYLINDER -> s[(int) fault.place()] *= 1 - fault.size();
            case CARBURETTORS -> {
                for (int c = 0; c < s.length; c++) {
                    s[c] *= 1 + (c % 2 == 0 ? 1 : -1) * fault.size();
                }
            }
            case CRANK_MASS -> crank = crank.plus(Phasor.polar(fault.size(), fault.place()));
            case DRIVE -> {
                mod += fault.size();
                driven = fault.place() == 0;
            }
            case LOOSE_MOUNT -> {
                loose = fault.size();
                mount = (int) fault.place();
            }
            default -> {}
        }
        return new EngineForces(
                machine,
                front,
                mesh,
                torqueAtMaxNm,
                liftPerTorque,
                crank,
                pistons,
                s,
                cycleVariation,
                mod,
                driven,
                loose,
                mount);
    }

    double[] strength() {
        return strength.clone();
    }

    double cycleVariation() {
        return cycleVariation;
    }

    double modulation() {
        return modulation;
    }

    boolean drivenWheel() {
        return drivenWheel;
    }

    double looseness() {
        return looseness;
    }

    int looseMount() {
        return looseMount;
    }

    /** Line of crank order m of one cylinder's gas torque. */
    Phasor[] firing(double order, double engineRpm) {
        double share = engineRpm / machine.maxRpm();
        double mean =
                torqueAtMaxNm * (0.25 + 0.75 * share * share); // a propeller's load, and what the engine itself drags
        Phasor torque = new Phasor(mean * 2 * Math.exp(-0.35 * (order - 0.5)), 0);
        Phasor[] turning = Body.moment(torque, Phasor.ZERO, Phasor.ZERO);
        return Body.sum(turning, Body.forceAt(front, Phasor.ZERO, Phasor.ZERO, torque.times(liftPerTorque)));
    }

    /** Crank 1× of mass. */
    Phasor[] crankOnce(double engineRpm) {
        double omega = engineRpm / 60 * 2 * Math.PI;
        boolean turnedRound = machine.drive() == Machine.Drive.TEETH || machine.drive() == Machine.Drive.DECIMALS;
        double sense = (machine.clockwise() ? -1 : 1) * (turnedRound ? -1 : 1);
        Phasor pull = crankUnbalance.times(omega * omega);
        return Body.forceAt(front, Phasor.ZERO, pull, pull.times(new Phasor(0, -sense)));
    }

    /** Crank 2× of the pistons. */
    Phasor[] crankTwice(double engineRpm) {
        double omega = engineRpm / 60 * 2 * Math.PI;
        return Body.forceAt(front, Phasor.ZERO, Phasor.ZERO, pistons.times(omega * omega));
    }

    /**
     * The line where the wheels' teeth meet: 2 % of the tooth force, across and along (helix). Its sidebands, one and two
     * turns of the wheel that is out of true, are modulation/2 and modulation²/8 of it.
     */
    Phasor[] mesh(double engineRpm) {
        double share = engineRpm / machine.maxRpm();
        double force = 0.02 * torqueAtMaxNm * machine.cylinders() / 0.04 * (0.25 + 0.75 * share * share);
        return Body.forceAt(mesh, new Phasor(0.2 * force, 0), new Phasor(force, 0), new Phasor(0.36 * force, 0));
    }

    /**
     * A loose mount knocks once in two crank turns, at random strength: lines at all halves of the crank order. Not solved
     * from the gap but put on as a force, size × what 1 kg·mm would pull at crank speed, falling as exp(−m/3) with the order.
     */
    Phasor[] knock(double order, double engineRpm, double[] mountPlace) {
        double omega = engineRpm / 60 * 2 * Math.PI;
        double force = looseness * 0.001 * omega * omega * Math.exp(-order / 3);
        return Body.forceAt(mountPlace, Phasor.ZERO, new Phasor(0.3 * force, 0), new Phasor(force, 0));
    }
}
