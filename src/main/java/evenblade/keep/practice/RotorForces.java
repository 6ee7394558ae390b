package evenblade.keep.practice;

import evenblade.base.numeric.Phasor;
import java.util.ArrayList;
import java.util.List;

/**
 * What the propeller does to the engine in one revolution, by propeller order, for an angular speed of 1
 * rad/s; everything here grows with its square. Each blade is followed round the disc and its pulls are
 * added in fixed directions; orders come out by a discrete Fourier sum. So the rule that blades which are
 * alike make only blade pass isn't put in: it comes out.
 *
 * <ul>
 *   <li>centrifugal pull of balance weights on the hub, in the plane of the disc;
 *   <li>centrifugal pull {@code m·r_cg} along the blade, acting {@code δ·r_cg/R} ahead of the disc;
 *   <li>thrust, {@code T/B·(1 + 0.09·Δβ)} with {@code Δβ} in degrees, at 0.7 R; the air that meets the disc on
 *       the ground is uneven, so it swells and fades over a revolution in all orders ({@code 0.1/k});
 *   <li>drag against rotation, an eighth of the thrust, at the same place.
 * </ul>
 *
 * <p>The figures of the air are estimates for the order of magnitude: whole thrust 1800 N at the reference
 * speed for a disc of 1.7 m, growing with the fourth power of the diameter.
 */
final class RotorForces {
    static final double THRUST_PER_DEGREE = 0.09; // invented: order of magnitude
    static final double THRUST_RADIUS_SHARE = 0.7; // common practice: thrust acts at 70 to 75 % of the radius
    private static final double DRAG_SHARE = 1.0 / 8; // invented
    private static final double UNEVEN_AIR = 0.1; // invented
    private static final double REFERENCE_THRUST_N = 1800; // invented
    private static final double REFERENCE_DIAMETER_M = 1.7; // invented

    private RotorForces() {}

    /**
     * Complex amplitude of one propeller order; multiply by ω² (rad²/s²) for newtons and newton metres.
     *
     * @param alongN force along the shaft
     * @param acrossN force across it, level
     * @param upN force across it, upright
     * @param tiltAcrossNm moment about the hub that swings the nose sideways
     * @param tiltUpNm moment about the hub that lifts the nose
     */
    record Order(int order, Phasor alongN, Phasor acrossN, Phasor upN, Phasor tiltAcrossNm, Phasor tiltUpNm) {}

    /** Orders 1 to twice the blade count. */
    static List<Order> of(Machine machine) {
        int highest = 2 * machine.blades().size();
        int angles = 16 * machine.blades().size();
        List<Order> orders = new ArrayList<>();
        for (int k = 1; k <= highest; k++) {
            Phasor[] sums = {Phasor.ZERO, Phasor.ZERO, Phasor.ZERO, Phasor.ZERO, Phasor.ZERO};
            for (int i = 0; i < angles; i++) {
                double angle = 2 * Math.PI * i / angles;
                double[] pulls = pulls(machine, angle, highest);
                Phasor turn = new Phasor(Math.cos(k * angle), -Math.sin(k * angle)).times(2.0 / angles);
                for (int p = 0; p < sums.length; p++) {
                    sums[p] = sums[p].plus(turn.times(pulls[p]));
                }
            }
            orders.add(new Order(k, sums[0], sums[1], sums[2], sums[3], sums[4]));
        }
        return orders;
    }

    /** Thrust of one blade in even air at 1 rad/s, newtons. */
    static double evenBladeThrustN(Machine machine) {
        double omega = 2 * Math.PI * Machine.REFERENCE_HZ;
        double scale = Math.pow(2 * machine.tipRadiusM() / REFERENCE_DIAMETER_M, 4);
        return REFERENCE_THRUST_N * scale / (omega * omega) / machine.blades().size();
    }

    /** All pulls in fixed directions with position 1 at the given angle from level. */
    private static double[] pulls(Machine machine, double angle, int highest) {
        double[] sums = new double[5];
        double radius = THRUST_RADIUS_SHARE * machine.tipRadiusM();
        double meanPitch =
                machine.blades().stream().mapToDouble(Blade::pitchDeg).average().orElse(0);
        for (int position = 1; position <= machine.blades().size(); position++) {
            Blade blade = machine.blades().get(position - 1);
            double at = angle + Math.toRadians(machine.aheadDeg(position));
            double across = Math.cos(at);
            double up = Math.sin(at);
            double pull = blade.massKg() * blade.centreOfGravityM();
            double ahead = machine.trackAtM(position) * blade.centreOfGravityM() / machine.tipRadiusM();
            double thrust = evenBladeThrustN(machine)
                    * (1 + THRUST_PER_DEGREE * (blade.pitchDeg() - meanPitch))
                    * air(at, highest);
            double drag = DRAG_SHARE * thrust;
            sums[0] += thrust;
            sums[1] += pull * across + drag * up;
            sums[2] += pull * up - drag * across;
            sums[3] += ahead * pull * across - thrust * radius * across;
            sums[4] += ahead * pull * up - thrust * radius * up;
        }
        for (Machine.HubMass weight : machine.hubWeights()) {
            double at = angle - Math.toRadians(weight.againstRotationDeg());
            sums[1] += weight.kgM() * Math.cos(at);
            sums[2] += weight.kgM() * Math.sin(at);
        }
        return sums;
    }

    private static double air(double at, int highest) {
        double factor = 1;
        for (int k = 1; k <= highest + 1; k++) {
            factor += UNEVEN_AIR / k * Math.cos(k * at - k * Math.toRadians(40));
        }
        return factor;
    }
}
