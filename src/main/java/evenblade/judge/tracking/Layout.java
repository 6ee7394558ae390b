package evenblade.judge.tracking;

import evenblade.base.problem.BadInput;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Which blade sits on which hub position. The blade keeps its mark when it moves; the position belongs to the hub.
 *
 * @param blades names of the blades, the first on hub position 1; at least 2, each once, none blank
 */
public record Layout(List<String> blades) {
    private static final String SOURCE = "layout";
    private static final String FORM = "one blade for each hub position, like 1=A,2=B,3=C";

    public Layout {
        blades = blades.stream().map(String::strip).toList();
        if (blades.size() < 2) {
            throw BadInput.in(SOURCE).found(blades.size() + " hub position(s)", "2 or more");
        }
        Set<String> seen = new HashSet<>();
        for (String blade : blades) {
            if (blade.isEmpty()) {
                throw BadInput.in(SOURCE).found("a blade without a name", FORM);
            }
            if (!seen.add(blade)) {
                throw BadInput.in(SOURCE).found("blade " + blade + " on two hub positions", "each blade once");
            }
        }
    }

    public static Layout of(String... blades) {
        return new Layout(List.of(blades));
    }

    /**
     * Reads {@code 1=A,2=B,3=C}; the positions may come in any order.
     *
     * @throws BadInput if a position is missing or named twice, a blade sits twice, or the text has another form
     */
    public static Layout parse(String text) {
        SortedMap<Integer, String> byPosition = new TreeMap<>();
        for (String entry : text.split(",", -1)) {
            String[] sides = entry.split("=", -1);
            if (sides.length != 2 || !sides[0].strip().matches("[0-9]{1,3}")) {
                throw BadInput.in(SOURCE).found("'" + entry.strip() + "'", FORM);
            }
            int position = Integer.parseInt(sides[0].strip());
            if (byPosition.put(position, sides[1]) != null) {
                throw BadInput.in(SOURCE).found("hub position " + position + " twice", "each hub position once");
            }
        }
        List<String> blades = new ArrayList<>();
        for (int position = 1; position <= byPosition.lastKey(); position++) {
            if (!byPosition.containsKey(position)) {
                throw BadInput.in(SOURCE)
                        .found("no blade on hub position " + position, "positions 1 to " + byPosition.lastKey());
            }
            blades.add(byPosition.get(position));
        }
        if (byPosition.firstKey() < 1) {
            throw BadInput.in(SOURCE).found("hub position " + byPosition.firstKey(), "positions counted from 1");
        }
        return new Layout(blades);
    }

    /** Number of hub positions, which is the number of blades. */
    public int positions() {
        return blades.size();
    }

    /** The blade on a hub position counted from 1. */
    public String at(int position) {
        return blades.get(position - 1);
    }

    /** How many hub positions carry another blade than in the other layout. */
    public int movedFrom(Layout other) {
        int moved = 0;
        for (int i = 0; i < blades.size(); i++) {
            if (i >= other.blades.size() || !blades.get(i).equals(other.blades.get(i))) {
                moved++;
            }
        }
        return moved;
    }

    /** Hub position to blade. */
    public SortedMap<Integer, String> byPosition() {
        SortedMap<Integer, String> map = new TreeMap<>();
        for (int i = 0; i < blades.size(); i++) {
            map.put(i + 1, blades.get(i));
        }
        return map;
    }

    /** As people write it: {@code 1=A, 2=B, 3=C}. */
    public String text() {
        StringBuilder text = new StringBuilder();
        byPosition().forEach((position, blade) -> text.append(text.isEmpty() ? "" : ", ")
                .append(position)
                .append('=')
                .append(blade));
        return text.toString();
    }
}
