package evenblade.keep.practice;

import evenblade.base.numeric.Phasor;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * What reaches a microphone beside the aircraft, line by line, as a share of the strongest the air carries
 * at the reference speed: every blade that passes, every cylinder that fires. Alike blades leave only blade
 * pass. A blade is louder by its thrust, and by about 5 times its track error over the tip radius, for it
 * cuts the wake of the one ahead differently (an estimate, for the order of magnitude). Sound grows with the
 * third power of speed.
 */
public final class Sound {
    private static final double WAKE = 5; // invented
    private static final double FADES_PER_ORDER = 0.2; // invented
    private static final double BLADE_LEVEL = 1.0; // invented: the rest is against this
    private static final double FIRING_LEVEL = 0.7; // invented
    private static final double FIRING_CORNER = 6; // invented
    private static final double RATTLE_LEVEL = 0.02; // invented

    private Sound() {}

    /** All lines, before any microphone. */
    public static List<Line> of(Machine machine) {
        List<Line> lines = new ArrayList<>();
        int blades = machine.blades().size();
        for (int k = 1; k <= 2 * blades; k++) {
            Phasor sum = Phasor.ZERO;
            for (int position = 1; position <= blades; position++) {
                double angle = k * machine.angleDeg(position);
                sum = sum.plus(Phasor.ofDegrees(loudness(machine, position), angle));
            }
            double carries = BLADE_LEVEL * Math.exp(-FADES_PER_ORDER * (k - blades)) / blades;
            lines.add(growing(k, sum.times(carries)));
        }
        double ratio = machine.installation().reduction().ratio();
        int cylinders = Math.max(1, machine.drive().cylinderStrength().size());
        for (Map.Entry<Double, Phasor> order :
                FiringForces.byCrankOrder(machine).entrySet()) {
            double carries = FIRING_LEVEL * FiringForces.pulse(order.getKey(), FIRING_CORNER) / cylinders;
            lines.add(growing(order.getKey() * ratio, order.getValue().times(carries)));
        }
        machine.installation()
                .reduction()
                .teeth()
                .ifPresent(teeth -> lines.add(growing(
                        teeth.driven(),
                        new Phasor(RATTLE_LEVEL * machine.drive().meshAcceleration(), 0))));
        return lines;
    }

    private static double loudness(Machine machine, int position) {
        double pitch = machine.blades().get(position - 1).pitchDeg();
        return 1 + RotorForces.THRUST_PER_DEGREE * pitch + WAKE * machine.trackAtM(position) / machine.tipRadiusM();
    }

    private static Line growing(double order, Phasor atReference) {
        return new Line(order, hz -> atReference.times(Math.pow(hz / Machine.REFERENCE_HZ, 3)));
    }
}
