package evenblade.measure.speed;

import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.OrderTable;
import evenblade.machine.installation.Shaft;
import java.util.ArrayList;
import java.util.List;

/**
 * The lines that propeller and engine make together, as multiples of propeller speed, each once.
 *
 * @param teeth rising by order
 * @param highestOrder up to which the band has to reach: the highest of the table; higher teeth are seen at low speed
 */
record Comb(List<ExpectedLine> teeth, double highestOrder) {
    /**
     * Its lines of one shaft that none of the other comes near.
     *
     * @param apart least distance, as a share of the order
     */
    Comb of(Shaft shaft, double apart) {
        return new Comb(
                teeth.stream()
                        .filter(tooth -> tooth.line().of() == shaft)
                        .filter(tooth -> teeth.stream()
                                .filter(other -> other.line().of() != shaft)
                                .noneMatch(other -> Math.abs(other.order() / tooth.order() - 1) < apart))
                        .toList(),
                highestOrder);
    }

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

        /** Whether it is the first of blade pass or of firing. */
        boolean first() {
            return weight > 1.4;
        }

        double order() {
            return line.propellerOrder();
        }
    }

    private static final int HIGHEST_MULTIPLE = 4; // ours
    /** Orders nearer than this, as a share, fall on one place in a short spectrum. */
    private static final double ONE_PLACE = 0.008;

    Comb {
        teeth = List.copyOf(teeth);
    }

    static Comb of(OrderTable table) {
        List<ExpectedLine> teeth = new ArrayList<>();
        List<OrderLine> lines = new ArrayList<>(table.lines());
        double highest = table.lines().stream()
                .filter(line -> line.role() != OrderLine.Role.MESH)
                .mapToDouble(OrderLine::propellerOrder)
                .max()
                .orElseThrow();
        boolean twoShafts = Math.abs(table.ratio() - 1) > OrderTable.COINCIDENT;
        beyondTable(table).stream()
                .filter(line -> twoShafts || line.propellerOrder() < highest)
                .forEach(lines::add);
        for (OrderLine line : lines) {
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
        return new Comb(teeth, highest);
    }

    /**
     * Common practice, no source: which lines an engine and propeller are usually heard by. Blade pass and firing
     * with their doubles are nearly always there; what comes from blades or cylinders that differ may be missing.
     */
    private static double weight(OrderLine line, OrderTable table) {
        return switch (line.role()) {
            case BLADE_PASS -> ofMultiple(line.order() / table.blades());
            case FIRING -> ofMultiple(line.order() / firingOrder(table));
            case UNEVEN_PROPELLER, CRANK -> line.first() ? 0.9 : 0.5;
            case HALF_CRANK -> 0.4;
            case MESH -> 0;
        };
    }

    /** Pulses fall off: the double is weaker than the first, the third weaker again. */
    static double ofMultiple(double multiple) {
        return multiple < 1.5 ? 1.5 : multiple < 2.5 ? 1.1 : multiple < 3.5 ? 0.8 : 0.6;
    }

    /**
     * Multiples of blade pass and firing above those of the table: heard where the band reaches, not measured. Those above
     * the table only of two shafts: where there is one, half its speed would look as good, whose table ends too low.
     */
    private static List<OrderLine> beyondTable(OrderTable table) {
        double firing = firingOrder(table);
        List<OrderLine> more = new ArrayList<>();
        for (int k = 3; k <= HIGHEST_MULTIPLE; k++) {
            more.add(new OrderLine(
                    Shaft.PROPELLER,
                    k * table.blades(),
                    k * table.blades(),
                    k + "× blade pass",
                    OrderLine.Role.BLADE_PASS,
                    k));
            if (firing > 0) {
                more.add(new OrderLine(
                        Shaft.CRANK, k * firing, k * firing * table.ratio(), k + "× firing", OrderLine.Role.FIRING, k));
            }
        }
        return more;
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

    /**
     * What a count makes too much of at a ratio with which lines of both shafts fall on one place: one line isn't two.
     *
     * @param own the ratio of this comb
     * @param other the ratio asked about
     */
    double countedTwice(double own, double other) {
        double sum = 0;
        for (ExpectedLine crank : teeth) {
            if (crank.line().of() == Shaft.CRANK) {
                double order = crank.order() / own * other;
                sum += teeth.stream()
                        .filter(t -> t.line().of() == Shaft.PROPELLER && Math.abs(t.order() / order - 1) < ONE_PLACE)
                        .mapToDouble(t -> Math.min(t.weight(), crank.weight()))
                        .max()
                        .orElse(0);
            }
        }
        return sum;
    }

    private static double firingOrder(OrderTable table) {
        return table.lines().stream()
                .filter(line -> line.role() == OrderLine.Role.FIRING)
                .mapToDouble(OrderLine::order)
                .min()
                .orElse(0);
    }
}
