package evenblade.judge.tracking;

import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;

/**
 * One set of things that may be out.
 *
 * @param blades which blades, as indices from 0
 * @param positions which hub positions, from 0
 * @param slip the reading that slipped, as an index into all readings; empty where none did
 */
record GroupHypothesis(Set<Integer> blades, Set<Integer> positions, OptionalInt slip) {
    /** What is out, apart from slips. */
    enum Family {
        NOTHING,
        BLADES,
        POSITIONS,
        BOTH
    }

    GroupHypothesis {
        blades = Set.copyOf(new TreeSet<>(blades));
        positions = Set.copyOf(new TreeSet<>(positions));
    }

    GroupHypothesis with(int slipped) {
        return new GroupHypothesis(blades, positions, OptionalInt.of(slipped));
    }

    Family family() {
        if (blades.isEmpty()) {
            return positions.isEmpty() ? Family.NOTHING : Family.POSITIONS;
        }
        return positions.isEmpty() ? Family.BLADES : Family.BOTH;
    }

    /** Columns of {@link MarkEvidence}. */
    int[] columns(int positionCount, int bladeCount) {
        int[] columns = new int[blades.size() + positions.size() + (slip.isPresent() ? 1 : 0)];
        int next = 0;
        for (int position : positions) {
            columns[next++] = position;
        }
        for (int blade : blades) {
            columns[next++] = positionCount + blade;
        }
        if (slip.isPresent()) {
            columns[next] = positionCount + bladeCount + slip.getAsInt();
        }
        return columns;
    }
}
