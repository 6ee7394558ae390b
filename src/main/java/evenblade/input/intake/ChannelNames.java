package evenblade.input.intake;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Names for the value columns of a table: the heading, else the place; no name twice. */
final class ChannelNames {
    private ChannelNames() {}

    /**
     * One name per value column.
     *
     * @param columns which of the table's columns hold values, counted from 0
     * @param headings of all columns
     */
    static List<String> of(List<Integer> columns, List<ColumnHeading> headings) {
        List<String> names = new ArrayList<>();
        Set<String> taken = new HashSet<>();
        for (int column : columns) {
            String heading = headings.get(column).name();
            String name = heading.isBlank() ? "column " + (column + 1) : heading;
            String unique = name;
            for (int again = 2; !taken.add(unique); again++) {
                unique = name + " " + again;
            }
            names.add(unique);
        }
        return names;
    }
}
