package evenblade.face.desktop;

import evenblade.base.problem.BadInput;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;

/** Turns readings typed by position into readings written by round. */
final class Rounds {
    private Rounds() {}

    /**
     * One round after the other, as they are written down.
     *
     * @param hub each reading may be several, parted by semicolons
     * @param withUnit adds the unit where only a number was typed
     * @throws BadInput where a position lacks a reading that others have
     */
    static String text(HubFields hub, UnaryOperator<String> withUnit) {
        List<List<String>> byPosition = new ArrayList<>();
        for (int p = 1; p <= hub.positions(); p++) {
            byPosition.add(List.of(hub.reading(p).split(";", -1)));
        }
        int rounds = byPosition.stream().mapToInt(List::size).max().orElse(1);
        List<String> lines = new ArrayList<>();
        for (int round = 0; round < rounds; round++) {
            List<String> line = new ArrayList<>();
            for (int p = 0; p < byPosition.size(); p++) {
                List<String> typed = byPosition.get(p);
                if (round >= typed.size() || typed.get(round).isBlank()) {
                    throw BadInput.in("position " + (p + 1))
                            .found(
                                    "no reading" + (rounds > 1 ? " in round " + (round + 1) : ""),
                                    "one for every blade");
                }
                line.add(withUnit.apply(typed.get(round).strip()));
            }
            lines.add(String.join(", ", line));
        }
        return String.join("; ", lines);
    }
}
