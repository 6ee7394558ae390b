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

    /** Common practice, no source: which lines an engine and propeller are usually heard by. */
    private static double weight(OrderLine line, OrderTable table) {
        boolean first =
                switch (line.role()) {
                    case BLADE_PASS, FIRING, UNEVEN_PROPELLER, CRANK -> line.first();
                    default -> false;
                };
        return switch (line.role()) {
            case BLADE_PASS -> first ? 1.25 : 1.0;
            case FIRING -> first ? 1.2 : 1.0;
            case UNEVEN_PROPELLER -> first ? 1.15 : 0.8;
            case CRANK -> first ? 1.05 : 0.85;
            case HALF_CRANK -> 0.75;
            case MESH -> 0;
        };
    }

    double highestOrder() {
        return teeth.get(teeth.size() - 1).order();
    }
}
