package evenblade.measure.speed;

import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.OrderTable;
import java.util.ArrayList;
import java.util.List;

/**
 * The lines that propeller and engine make together, as multiples of propeller speed, each once.
 *
 * @param teeth rising by order
 */
record Comb(List<ExpectedLine> teeth) {
    /**
     * One line of the comb.
     *
     * @param line what makes it; where several coincide, the likeliest to be strong
     * @param weight how much it counts in the search: lines that most machines show count more, so
     *     that a single visible line is taken for what it most likely is
     */
    record ExpectedLine(OrderLine line, double weight) {
        /** Whether most machines show it: blade pass, firing, or once per revolution of a shaft. */
        boolean main() {
            return weight > 1;
        }

        double order() {
            return line.propellerOrder();
        }
    }

    Comb {
        teeth = List.copyOf(teeth);
    }

    static Comb of(OrderTable table) {
        List<ExpectedLine> teeth = new ArrayList<>();
        for (OrderLine line : table.lines()) {
            if (line.role() == OrderLine.Role.MESH) {
                continue;
            }
            double weight = weight(line, table);
            int same = -1;
            for (int i = 0; i < teeth.size(); i++) {
                if (OrderTable.coincide(teeth.get(i).line(), line)) {
                    same = i;
                }
            }
            if (same < 0) {
                teeth.add(new ExpectedLine(line, weight));
            } else if (weight > teeth.get(same).weight()) {
                teeth.set(same, new ExpectedLine(line, weight));
            }
        }
        teeth.sort(java.util.Comparator.comparingDouble(ExpectedLine::order));
        return new Comb(teeth);
    }

    /**
     * Common practice, no source: which lines an engine and propeller are usually heard by. Blade pass and firing
     * with their doubles are nearly always there; what comes from blades or cylinders that differ may be missing.
     */
    private static double weight(OrderLine line, OrderTable table) {
        return switch (line.role()) {
            case BLADE_PASS -> line.order() == table.blades() ? 1.5 : 1.1;
            case FIRING -> line.order() == firingOrder(table) ? 1.5 : 1.1;
            case UNEVEN_PROPELLER -> line.order() == 1 ? 0.9 : 0.5;
            case CRANK -> line.order() == 1 ? 0.9 : 0.5;
            case HALF_CRANK -> 0.4;
            case MESH -> 0;
        };
    }

    /**
     * Weight of an order in a table whose main lines lie at {@code scale} times their orders in this one.
     *
     * @param order of the one shaft there is
     */
    static double weightAt(Comb comb, double order, double scale) {
        for (ExpectedLine tooth : comb.teeth) {
            if (tooth.main() && Math.abs(tooth.order() * scale - order) < 1e-6) {
                return tooth.weight();
            }
        }
        return order == 1 ? 0.9 : order == Math.rint(order) ? 0.5 : 0.4;
    }

    private static double firingOrder(OrderTable table) {
        return table.lines().stream()
                .filter(line -> line.role() == OrderLine.Role.FIRING)
                .mapToDouble(OrderLine::order)
                .min()
                .orElse(0);
    }

    double highestOrder() {
        return teeth.get(teeth.size() - 1).order();
    }
}
