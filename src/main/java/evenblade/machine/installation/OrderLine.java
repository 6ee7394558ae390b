package evenblade.machine.installation;

/**
 * One line that a turning machine may show: so many times per revolution of a shaft.
 *
 * @param of the shaft it is counted on
 * @param order multiple of that shaft's speed
 * @param propellerOrder the same line as a multiple of propeller speed
 * @param name what a technician calls it, unique in a table
 * @param role what makes it
 */
public record OrderLine(Shaft of, double order, double propellerOrder, String name, Role role) {
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
