package evenblade.tell.chart;

/**
 * An estimate at a place of the lying axis.
 *
 * @param x where, in the unit of that axis
 * @param estimate what stands there
 */
public record PlacedEstimate(double x, PlottedEstimate estimate) {}
