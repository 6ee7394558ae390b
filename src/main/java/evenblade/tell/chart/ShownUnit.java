package evenblade.tell.chart;

import evenblade.base.units.SignalUnit;
import evenblade.base.units.SignalUnit.Quantity;
import java.util.List;

/**
 * The unit that amplitudes of lines are shown in. Of a sine of f Hz, acceleration, velocity and displacement go over into each other:
 * {@code v = a/(2πf)}, {@code x = v/(2πf)}, all of them peak values.
 */
public enum ShownUnit {
    AS_MEASURED("as measured", "", 0, 1),
    ACCELERATION("m/s²", "acceleration", 2, 1),
    VELOCITY("mm/s", "velocity", 1, 1e-3),
    INCH_VELOCITY("in/s", "velocity", 1, 0.0254),
    DISPLACEMENT("µm", "displacement", 0, 1e-6);

    /** Division by the frequency makes mountains of a sensor's drift; the slowest line of an engine at idle lies above. Our own choice. */
    static final double LEAST_HZ = 5;

    private final String display;
    private final String quantity;
    /** Times it is a displacement's derivative. */
    private final int order;

    private final double siFactor;

    ShownUnit(String display, String quantity, int order, double siFactor) {
        this.display = display;
        this.quantity = quantity;
        this.order = order;
        this.siFactor = siFactor;
    }

    /** As written in a choice. */
    public String display() {
        return display;
    }

    /** The units that a signal's lines can be shown in; only as measured where its scale isn't known. */
    static List<ShownUnit> of(SignalUnit unit) {
        return unit.quantity() == Quantity.ACCELERATION || unit.quantity() == Quantity.VELOCITY
                ? List.of(values())
                : List.of(AS_MEASURED);
    }

    /** Whether a curve from 0 Hz up has to begin later. */
    boolean integrates(SignalUnit from) {
        return this != AS_MEASURED && order < order(from);
    }

    /** What an amplitude at a frequency above 0 is multiplied by. */
    double factor(SignalUnit from, double frequencyHz) {
        return this == AS_MEASURED
                ? 1
                : from.siFactor() / siFactor * Math.pow(2 * Math.PI * frequencyHz, order - order(from));
    }

    String unit(SignalUnit from) {
        return this == AS_MEASURED ? from.display() + " peak" : display + " peak";
    }

    String title(SignalUnit from) {
        return this == AS_MEASURED ? AmplitudeScale.title(from) : quantity + ", peak (" + display + ")";
    }

    private static int order(SignalUnit from) {
        return from.quantity() == Quantity.ACCELERATION ? 2 : 1;
    }
}
