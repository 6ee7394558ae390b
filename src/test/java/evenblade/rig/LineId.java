package evenblade.rig;

/** A line is known by its shaft and its order. */
public record LineId(Shaft shaft, double order) {
    /** The order counted in propeller turns, at the ratio given (engine turns per propeller turn). */
    double propellerOrder(double ratio) {
        return shaft == Shaft.PROPELLER ? order : order * ratio;
    }
}
