package evenblade.tell.chart;

import java.util.List;

/**
 * How fast things turned where a cursor reads.
 *
 * @param propellerHz speed of the propeller
 * @param ratio engine revolutions per propeller revolution
 */
public record ShaftSpeeds(double propellerHz, double ratio) {
    /** A frequency as an order of both shafts. */
    List<Spot.Reading> orders(double frequencyHz) {
        return List.of(
                Spot.Reading.of(Spot.What.PROPELLER_ORDER, frequencyHz / propellerHz),
                Spot.Reading.of(Spot.What.CRANK_ORDER, frequencyHz / (propellerHz * ratio)));
    }
}
