package evenblade.tell.chart;

/**
 * A number with its 95 % interval, as a picture shows it.
 *
 * @param value in the picture's unit
 * @param ciLow lower end of the interval
 * @param ciHigh upper end; where the thing isn't there, it lies below this
 * @param there whether it stands out: a detected line, a deviation beyond its interval
 */
public record PlottedEstimate(double value, double ciLow, double ciHigh, boolean there) {
    /**
     * An estimate at a place of the lying axis.
     *
     * @param x where, in the unit of that axis
     * @param estimate what stands there
     */
    public record PlacedEstimate(double x, PlottedEstimate estimate) {}
}
