package evenblade.measure.orders;

import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.OrderTable;
import evenblade.machine.installation.Shaft;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * One pair of columns, cosine and sine, in the fit: one or more lines of the table that a dwell of
 * this length can't tell apart.
 *
 * @param members positions of those lines in the order table; empty for a steady tone
 * @param order multiple of the propeller's speed; 0 for a steady tone
 * @param steadyHz frequency of a tone that keeps no step with the propeller; 0 for an order
 * @param ofCrank whether it keeps step with the crank, as far as that differs
 */
record FittedLine(List<Integer> members, double order, double steadyHz, boolean ofCrank) {
    /** Lines this many times 1/length apart are separated. */
    static final double RESOLVED = 1.5;

    FittedLine {
        members = List.copyOf(members);
    }

    /** In step with the propeller, or a steady tone. */
    FittedLine(List<Integer> members, double order, double steadyHz) {
        this(members, order, steadyHz, false);
    }

    static FittedLine steady(double hz) {
        return new FittedLine(List.of(), 0, hz);
    }

    double frequencyHz(double propellerHz) {
        return steadyHz > 0 ? steadyHz : order * propellerHz;
    }

    /** A line's order on the propeller once the ratio has been corrected by the given share. */
    static double order(OrderLine line, double ratioCorrection) {
        return line.of() == Shaft.CRANK && line.role() != OrderLine.Role.MESH
                ? line.propellerOrder() * (1 + ratioCorrection)
                : line.propellerOrder();
    }

    /**
     * Gathers the lines inside the range into groups that a dwell can resolve.
     *
     * @param table the lines
     * @param ratioCorrection see {@link evenblade.measure.speed.SpeedResult#ratioCorrection}
     * @param propellerHz mean speed of the dwell
     * @param lengthS its length
     * @param upToHz highest frequency measured
     * @param resolved how many times 1/length lines must lie apart to be separated, {@link #RESOLVED} or more
     */
    static List<FittedLine> group(
            OrderTable table,
            double ratioCorrection,
            double propellerHz,
            double lengthS,
            double upToHz,
            double resolved) {
        List<Integer> rising = new ArrayList<>();
        for (int i = 0; i < table.lines().size(); i++) {
            if (order(table.lines().get(i), ratioCorrection) * propellerHz <= upToHz) {
                rising.add(i);
            }
        }
        rising.sort(Comparator.comparingDouble(i -> order(table.lines().get(i), ratioCorrection)));
        List<FittedLine> groups = new ArrayList<>();
        List<Integer> open = new ArrayList<>();
        double last = Double.NEGATIVE_INFINITY;
        for (int i : rising) {
            OrderLine line = table.lines().get(i);
            double order = order(line, ratioCorrection);
            boolean coincides = !open.isEmpty()
                    && (order - last <= OrderTable.COINCIDENT * order
                            || (order - last) * propellerHz * lengthS < resolved);
            if (!coincides && !open.isEmpty()) {
                groups.add(of(open, table, ratioCorrection));
                open = new ArrayList<>();
            }
            open.add(i);
            last = order;
        }
        if (!open.isEmpty()) {
            groups.add(of(open, table, ratioCorrection));
        }
        return groups;
    }

    private static FittedLine of(List<Integer> members, OrderTable table, double ratioCorrection) {
        double sum = 0;
        for (int i : members) {
            sum += order(table.lines().get(i), ratioCorrection);
        }
        return new FittedLine(members, sum / members.size(), 0, ofCrank(members, table));
    }

    private static boolean ofCrank(List<Integer> members, OrderTable table) {
        return members.stream()
                .map(table.lines()::get)
                .allMatch(line -> line.of() == Shaft.CRANK && line.role() != OrderLine.Role.MESH);
    }
}
