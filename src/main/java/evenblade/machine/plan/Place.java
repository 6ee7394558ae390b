package evenblade.machine.plan;

import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.OrderTable;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * One spot on the scale of orders, and every line that falls on it: two or more can't be separated
 * by any analysis.
 *
 * @param propellerOrder the spot as a multiple of propeller speed
 * @param lines at least one
 */
public record Place(double propellerOrder, List<OrderLine> lines) {
    public Place {
        lines = List.copyOf(lines);
    }

    /** All spots of a table, lowest first. */
    static List<Place> of(OrderTable table) {
        List<OrderLine> sorted = new ArrayList<>(table.lines());
        sorted.sort(Comparator.comparingDouble(OrderLine::propellerOrder));
        List<Place> places = new ArrayList<>();
        List<OrderLine> here = new ArrayList<>();
        for (OrderLine line : sorted) {
            if (!here.isEmpty() && !OrderTable.coincide(here.get(0), line)) {
                places.add(new Place(here.get(0).propellerOrder(), here));
                here.clear();
            }
            here.add(line);
        }
        places.add(new Place(here.get(0).propellerOrder(), here));
        return List.copyOf(places);
    }

    /** Whether several lines share the spot. */
    public boolean shared() {
        return lines.size() > 1;
    }

    /** Names of its lines. */
    public List<String> names() {
        return lines.stream().map(OrderLine::name).toList();
    }
}
