package evenblade.keep.job;

import evenblade.base.problem.BadInput;
import evenblade.base.units.Angle;
import evenblade.base.units.Length;
import evenblade.base.units.Mass;

/**
 * A weight that was put on the hub, as entered; each text with its unit.
 *
 * @param mass such as {@code 10 g} or {@code 1/4 oz}
 * @param radius of its middle from the shaft's, such as {@code 60 mm}
 * @param angle from hub position 1, in the sense that angles are counted in on this hub
 */
public record HubWeight(String mass, String radius, String angle) {
    /** More turns one way than this is a slip of the pen. */
    private static final double ONE_TURN_DEG = 360;

    /** Refuses what can't be read. */
    public HubWeight {
        Mass.parsePositive(mass, BadInput.in("mass"));
        Length.parsePositive(radius, BadInput.in("radius"));
        if (Math.abs(Angle.parse(angle, BadInput.in("angle")).degrees()) > ONE_TURN_DEG) {
            throw BadInput.in("angle").found("'" + angle + "'", "an angle within one turn, such as 120 deg");
        }
    }

    public double massG() {
        return Mass.parsePositive(mass, BadInput.in("mass")).grams();
    }

    public double radiusMm() {
        return Length.parsePositive(radius, BadInput.in("radius")).millimetres();
    }

    public double angleDeg() {
        return Angle.parse(angle, BadInput.in("angle")).degrees();
    }

    /** As entered, in one line. */
    public String text() {
        return mass + " at " + radius + ", " + angle;
    }
}
