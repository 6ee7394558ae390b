package evenblade.keep.practice;

import evenblade.base.numeric.Phasor;
import evenblade.machine.installation.Reduction.Teeth;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Acceleration at the sensor, line by line, in m/s²: the forces of propeller, crank and cylinders move the
 * body, the mounts let it. All forces grow with the square of speed; the mounts add what depends on frequency.
 */
public final class Shaking {
    /** Torque pulse of one cylinder at the reference speed, N·m. */
    private static final double PULSE_NM = 28;

    private static final double PULSE_CORNER = 3; // invented
    /** Share of the torque's shaking across that the casing passes on along and up. */
    private static final double CASING_ALONG = 0.12;

    private static final double CASING_UP = 0.35; // invented
    /** Where the crank's heavy spot sits behind the centre of gravity. */
    private static final double CRANK_BEHIND_M = 0.05;

    private static final double[] RATTLE_ORDERS = {0.5, 1, 1.5, 2, 2.5, 3, 4, 5}; // invented
    private static final double[] RATTLE_SHARES = {0.45, 1, 0.3, 0.6, 0.2, 0.4, 0.3, 0.2}; // invented

    private final Machine machine;
    private final SensorAxis axis;
    private final List<Line> lines = new ArrayList<>();

    private Shaking(Machine machine, SensorAxis axis) {
        this.machine = machine;
        this.axis = axis;
    }

    /** All lines that the sensor feels in one direction. */
    public static List<Line> of(Machine machine, SensorAxis axis) {
        Shaking shaking = new Shaking(machine, axis);
        shaking.addPropeller();
        shaking.addCrank();
        shaking.addFiring();
        shaking.addMesh();
        shaking.addRattle();
        return List.copyOf(shaking.lines);
    }

    private void addPropeller() {
        Body body = machine.body();
        for (RotorForces.Order force : RotorForces.of(machine)) {
            Phasor swing = force.tiltAcrossNm().plus(force.acrossN().times(body.propellerAheadM()));
            Phasor lift = force.tiltUpNm().plus(force.upN().times(body.propellerAheadM()));
            add(force.order(), slid(force.alongN(), force.acrossN(), force.upN()), tilted(swing, lift));
        }
    }

    private void addCrank() {
        double ratio = machine.installation().reduction().ratio();
        double pull = machine.drive().crankImbalanceKgM() * ratio * ratio;
        Phasor across = new Phasor(pull, 0);
        Phasor up = new Phasor(0, -pull);
        add(ratio, slid(Phasor.ZERO, across, up), tilted(across.times(-CRANK_BEHIND_M), up.times(-CRANK_BEHIND_M)));
    }

    private void addFiring() {
        double share =
                switch (axis) {
                    case ALONG -> CASING_ALONG;
                    case ACROSS -> 1;
                    case UP -> CASING_UP;
                };
        double ratio = machine.installation().reduction().ratio();
        for (Map.Entry<Double, Phasor> order :
                FiringForces.byCrankOrder(machine).entrySet()) {
            double torque = PULSE_NM * FiringForces.pulse(order.getKey(), PULSE_CORNER) / square(referenceOmega());
            Phasor roll = order.getValue().times(torque / machine.body().rollInertia());
            add(
                    order.getKey() * ratio,
                    Phasor.ZERO,
                    roll.times(share * machine.body().sensorAboveM()));
        }
    }

    private void addMesh() {
        if (machine.drive().meshAcceleration() == 0) {
            return;
        }
        double teeth = machine.installation()
                .reduction()
                .teeth()
                .map(Teeth::driven)
                .orElseThrow(() -> new IllegalStateException("a mesh without teeth"));
        double amplitude = machine.drive().meshAcceleration();
        addFree(teeth, amplitude);
        for (int k = 1; k <= 2; k++) {
            double side = amplitude * Math.pow(machine.drive().meshModulation(), k) / 2;
            if (side > 0) {
                addFree(teeth - k, side);
                addFree(teeth + k, side);
            }
        }
    }

    private void addRattle() {
        if (machine.drive().rattleAcceleration() == 0) {
            return;
        }
        double share =
                switch (axis) {
                    case ALONG -> 0.3;
                    case ACROSS -> 0.5;
                    case UP -> 1;
                };
        for (int i = 0; i < RATTLE_ORDERS.length; i++) {
            addFree(RATTLE_ORDERS[i], share * machine.drive().rattleAcceleration() * RATTLE_SHARES[i]);
        }
    }

    /** Acceleration of a free body in this direction, from a force at its centre of gravity. */
    private Phasor slid(Phasor along, Phasor across, Phasor up) {
        Phasor force =
                switch (axis) {
                    case ALONG -> along;
                    case ACROSS -> across;
                    case UP -> up;
                };
        return force.times(1 / machine.body().massKg());
    }

    /** From moments that swing the nose sideways and lift it: what is above the shaft moves back. */
    private Phasor tilted(Phasor swing, Phasor lift) {
        Body body = machine.body();
        Phasor arm =
                switch (axis) {
                    case ALONG -> lift.times(-body.sensorAboveM());
                    case ACROSS -> swing.times(body.sensorAheadM());
                    case UP -> lift.times(body.sensorAheadM());
                };
        return arm.times(1 / body.tiltInertia());
    }

    /** A line whose free acceleration at 1 rad/s is given, let through by the mounts. */
    private void add(double order, Phasor slide, Phasor rock) {
        Body body = machine.body();
        lines.add(new Line(order, hz -> {
            Phasor moved = slide.times(body.slide().at(order * hz))
                    .plus(rock.times(body.rock().at(order * hz)));
            return moved.times(square(2 * Math.PI * hz));
        }));
    }

    /** A line inside the casing, stated at the reference speed. */
    private void addFree(double order, double amplitude) {
        lines.add(new Line(order, hz -> Phasor.ofDegrees(amplitude * square(hz / Machine.REFERENCE_HZ), 70 * order)));
    }

    private static double referenceOmega() {
        return 2 * Math.PI * Machine.REFERENCE_HZ;
    }

    private static double square(double x) {
        return x * x;
    }
}
