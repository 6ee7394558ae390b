package evenblade.machine.installation;

import evenblade.base.units.Angle;
import evenblade.base.units.Length;
import evenblade.base.units.Mass;
import java.util.List;
import java.util.Optional;

/**
 * Where balance weights may go on this hub and which there are; all of it may be left out.
 *
 * @param places where the maker allows a weight
 * @param largest the most at one place
 * @param stock kinds of weight that the shop has
 * @param angles the sense in which angles on the hub are counted; empty until somebody has answered that
 */
public record HubWeights(List<Place> places, Optional<Mass> largest, List<Mass> stock, Optional<HubCounting> angles) {
    /** Nothing was said. */
    public static final HubWeights NONE = new HubWeights(List.of(), Optional.empty(), List.of(), Optional.empty());

    public HubWeights {
        places = List.copyOf(places);
        stock = List.copyOf(stock);
    }

    /**
     * One place.
     *
     * @param name as marked on the hub
     * @param angle from hub position 1, in the sense that angles are counted in
     * @param radius of a weight's middle from the shaft's
     */
    public record Place(String name, Angle angle, Length radius) {}
}
