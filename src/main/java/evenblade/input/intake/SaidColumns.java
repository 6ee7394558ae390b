package evenblade.input.intake;

import evenblade.base.problem.BadInput;
import evenblade.input.recording.ChannelChoice;
import evenblade.input.recording.TableReading;
import evenblade.input.recording.TableReading.ColumnReading;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * The headings of a table with what is said of its columns laid over them.
 *
 * @param headings one per column
 * @param time the column that is said to tell time, counted from 0
 * @param values the columns that are said to hold values
 */
record SaidColumns(List<ColumnHeading> headings, Optional<Integer> time, Set<Integer> values) {
    SaidColumns {
        headings = List.copyOf(headings);
        values = Set.copyOf(values);
    }

    /**
     * Lays what is said over what the file says.
     *
     * @throws BadInput where a column isn't there, holds no numbers, or is said to be two things
     */
    static SaidColumns of(Path file, TableShape shape, TableReading said) {
        List<String> written = written(shape);
        List<ColumnHeading> headings =
                new ArrayList<>(written.stream().map(ColumnHeading::of).toList());
        Optional<Integer> time = said.timeColumn().map(column -> {
            BadInput.Place place = BadInput.in(file + ", time column");
            int at = ChannelChoice.indexOf(names(written), column, place);
            CellText.Type type = shape.types().get(at);
            if (type != CellText.Type.NUMBER && !type.stamp()) {
                throw place.found(
                        "no numbers or times in '" + names(written).get(at) + "'", "a column of rising times");
            }
            return at;
        });
        time.ifPresent(at -> headings.set(at, headings.get(at).saidTime()));
        Set<Integer> values = new HashSet<>();
        for (ColumnReading each : said.columns()) {
            BadInput.Place place = BadInput.in(file + ", column");
            int at = ChannelChoice.indexOf(names(written), each.column(), place);
            if (!values.add(at) || time.equals(Optional.of(at))) {
                throw place.found("column " + (at + 1) + " named twice", "each column once, as time or as values");
            }
            if (shape.types().get(at) != CellText.Type.NUMBER) {
                throw place.found("no numbers in '" + names(written).get(at) + "'", "a column of values");
            }
            headings.set(at, headings.get(at).said(each.name(), each.scale()));
        }
        return new SaidColumns(headings, time, values);
    }

    /** The headings as they stand in the file, one per column. */
    static List<String> written(TableShape shape) {
        return IntStream.range(0, shape.columns())
                .mapToObj(i ->
                        i < shape.headings().size() ? shape.headings().get(i).strip() : "")
                .toList();
    }

    private static List<String> names(List<String> written) {
        return IntStream.range(0, written.size())
                .mapToObj(i -> written.get(i).isBlank() ? "column " + (i + 1) : written.get(i))
                .toList();
    }
}
