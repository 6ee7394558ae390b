package evenblade.machine.installation;

import evenblade.machine.installation.OrderLine.Role;
import java.util.ArrayList;
import java.util.List;

/**
 * The lines an installation can show, propeller first, then crank, then the drive.
 *
 * <p>Propeller orders run from 1 to twice the blade count. Crank orders run to twice the firing order
 * and at least to 4 (an electric motor: 1 and 2), in halves for a four-stroke. Gear mesh or belt
 * tooth passing is added where tooth counts are known.
 *
 * @param exactness how far the ratio can be relied on
 */
public record OrderTable(List<OrderLine> lines, int blades, double ratio, Exactness exactness) {
    /** Two lines closer than this, relative to their order, are one line to any analysis. */
    public static final double COINCIDENT = 1e-6;

    /** How far a ratio can be relied on. */
    public enum Exactness {
        /** From a gear's tooth counts, or there is none. */
        EXACT,
        /** Entered as a number: it may be off by its rounding. */
        ROUNDED,
        /** Of a belt: it may wander as the belt creeps. */
        CREEPS
    }

    public OrderTable {
        lines = List.copyOf(lines);
    }

    static OrderTable of(Installation installation) {
        int blades = installation.propeller().blades();
        Reduction reduction = installation.reduction();
        Engine engine = installation.engine();
        List<OrderLine> lines = new ArrayList<>();
        for (int k = 1; k <= 2 * blades; k++) {
            boolean bladePass = k % blades == 0;
            lines.add(new OrderLine(
                    Shaft.PROPELLER,
                    k,
                    k,
                    bladePass ? multiple(k / blades, "blade pass") : "propeller " + k + "×",
                    bladePass ? Role.BLADE_PASS : Role.UNEVEN_PROPELLER,
                    bladePass ? k / blades : k));
        }
        boolean electric = engine.cycle() == Engine.Cycle.ELECTRIC;
        double firing = engine.firingOrder();
        double highest = electric ? 2 : Math.max(4, 2 * firing);
        double step = engine.cycle() == Engine.Cycle.FOUR_STROKE ? 0.5 : 1;
        // A hair for the rounding of doubles.
        for (double m = step; m <= highest + 1e-9; m += step) {
            boolean fires = firing > 0 && isWhole(m / firing);
            Role role = fires ? Role.FIRING : isWhole(m) ? Role.CRANK : Role.HALF_CRANK;
            String name = fires
                    ? multiple((int) Math.round(m / firing), "firing")
                    : (electric ? "motor " : "crank ") + orderText(m);
            int multiple = (int) Math.round(fires ? m / firing : isWhole(m) ? m : 2 * m);
            lines.add(new OrderLine(Shaft.CRANK, m, m * reduction.ratio(), name, role, multiple));
        }
        if (reduction.teeth().isPresent()) {
            Reduction.Teeth teeth = reduction.teeth().get();
            lines.add(new OrderLine(
                    Shaft.CRANK,
                    teeth.driving(),
                    teeth.driven(),
                    reduction.kind() == Reduction.Kind.BELT ? "belt teeth" : "gear mesh",
                    Role.MESH,
                    1));
        }
        return new OrderTable(lines, blades, reduction.ratio(), exactness(reduction));
    }

    private static Exactness exactness(Reduction reduction) {
        if (reduction.kind() == Reduction.Kind.BELT) {
            return Exactness.CREEPS;
        }
        return reduction.ratio() == 1 || reduction.teeth().isPresent() ? Exactness.EXACT : Exactness.ROUNDED;
    }

    /** Whether no analysis can ever tell the two apart. */
    public static boolean coincide(OrderLine a, OrderLine b) {
        return Math.abs(a.propellerOrder() - b.propellerOrder()) <= COINCIDENT * a.propellerOrder();
    }

    /** An order as people write it: {@code 1×}, {@code 2½×}, {@code 2.43×}. */
    public static String orderText(double order) {
        // As above.
        long whole = (long) Math.floor(order + 1e-9);
        if (isWhole(order)) {
            return Math.round(order) + "×";
        }
        if (isWhole(2 * order)) {
            return (whole == 0 ? "" : String.valueOf(whole)) + "½×";
        }
        return String.format(java.util.Locale.ROOT, "%.3f×", order);
    }

    private static String multiple(int n, String name) {
        return n == 1 ? name : n + "× " + name;
    }

    private static boolean isWhole(double value) {
        return Math.abs(value - Math.rint(value)) < 1e-9; // the rounding of doubles
    }
}
