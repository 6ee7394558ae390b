package evenblade.keep.practice;

import evenblade.base.numeric.Phasor;
import evenblade.machine.installation.Engine;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What the cylinders do, by crank order: each is a pulse of torque once per firing, all alike but for their
 * strength, spread evenly over the cycle. {@code S_m = Σ_c s_c·e^{−jmψ_c}·P_m}: cylinders that are alike leave
 * only the multiples of the firing order.
 */
final class FiringForces {
    private FiringForces() {}

    /**
     * {@code Σ s_c·e^{−jmψ_c}} by crank order, up to twice the firing order and at least 4.
     *
     * @return nothing for an electric motor
     */
    static Map<Double, Phasor> byCrankOrder(Machine machine) {
        Map<Double, Phasor> orders = new LinkedHashMap<>();
        Engine engine = machine.installation().engine();
        List<Double> strengths = machine.drive().cylinderStrength();
        if (strengths.isEmpty()) {
            return orders;
        }
        double cycle = 2 * Math.PI * engine.cycle().revolutionsPerFiring();
        double step = 1.0 / engine.cycle().revolutionsPerFiring();
        int count = (int) Math.round(Math.max(4, 2 * engine.firingOrder()) / step);
        for (int n = 1; n <= count; n++) {
            double order = n * step;
            Phasor sum = Phasor.ZERO;
            for (int c = 0; c < strengths.size(); c++) {
                double firesAt = cycle * c / strengths.size();
                sum = sum.plus(
                        new Phasor(Math.cos(order * firesAt), -Math.sin(order * firesAt)).times(strengths.get(c)));
            }
            orders.put(order, sum);
        }
        return orders;
    }

    /** How much of a pulse of gas pressure reaches an order: {@code 1/(1 + (m/corner)²)}. */
    static double pulse(double crankOrder, double corner) {
        return 1 / (1 + crankOrder * crankOrder / (corner * corner));
    }
}
