package evenblade.machine.installation;

/**
 * One line that a turning machine may show: so many times per revolution of a shaft.
 *
 * @param of the shaft it is counted on
 * @param order multiple of that shaft's speed
 * @param propellerOrder the same line as a multiple of propeller speed
 * @param name what a technician calls it, unique in a table
 * @param role what makes it
 * @param multiple which of its kind: so many times blade pass, firing or mesh; so many times 1× of a shaft, or ½×
 */
public record OrderLine(Shaft of, double order, double propellerOrder, String name, Role role, int multiple) {
    /** An order that is so near a whole one is that one: orders are small whole numbers or halves of them. */
    private static final double SAME_ORDER = 1e-9;

    /** Whether it is the lowest of its kind: 1× of a shaft, blade pass itself, firing itself. */
    public boolean first() {
        return multiple == 1;
    }

    /** Whether it is blade pass itself, and none of its multiples. */
    public boolean bladePass() {
        return role == Role.BLADE_PASS && first();
    }

    /** Whether it is firing itself, and none of its multiples. */
    public boolean firing() {
        return role == Role.FIRING && first();
    }

    /** Whether it comes once per revolution of the propeller. */
    public boolean propellerOnce() {
        return of == Shaft.PROPELLER && Math.abs(order - 1) < SAME_ORDER;
    }

    /** What makes a line. */
    public enum Role {
        /** Propeller order that is no multiple of the blade count: blades that differ, or the shaft. */
        UNEVEN_PROPELLER,
        /** Multiple of the blade count: all blades alike make it. */
        BLADE_PASS,
        /** Whole crank order that isn't a firing order. */
        CRANK,
        /** Half crank order of a four-stroke. */
        HALF_CRANK,
        /** Multiple of the firings per crank revolution. */
        FIRING,
        /** Teeth meeting in the reduction drive. */
        MESH
    }
}
