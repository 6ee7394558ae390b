package evenblade.judge.balance;

import java.util.List;
import java.util.OptionalDouble;

/**
 * What a correction is asked from.
 *
 * @param readings the 1× line of each run; the first without weights
 * @param together what else is known of those runs
 * @param places where weights may go; empty if that wasn't said
 * @param largestMassG the most at one place
 * @param stockG kinds of weight that the shop has; empty if that wasn't said
 */
public record BalanceRequest(
        List<WeightedReading> readings,
        RunsTogether together,
        List<HubPlace> places,
        OptionalDouble largestMassG,
        List<Double> stockG) {
    public BalanceRequest {
        readings = List.copyOf(readings);
        places = List.copyOf(places);
        stockG = List.copyOf(stockG);
    }

    /**
     * A place on the hub where the maker allows a weight.
     *
     * @param name as the user calls it
     * @param angleDeg its angle, counted as weights are
     * @param radiusMm its radius, above zero
     */
    public record HubPlace(String name, double angleDeg, double radiusMm) {
        Unbalance with(double massG) {
            return Unbalance.of(massG, radiusMm, angleDeg);
        }
    }
}
