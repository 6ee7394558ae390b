package evenblade.face.cli;

import evenblade.base.units.SignalUnit;
import evenblade.face.app.OrderCells;
import evenblade.measure.orders.DwellOrders;
import java.util.ArrayList;
import java.util.List;

/** The lines of one dwell of one channel as a table of at most 80 columns. */
final class DwellTable {
    private static final int MOST_DECIMALS_ALIGNED = 7;

    private final List<OrderCells> cells;
    private final int places;

    private DwellTable(DwellOrders dwell, boolean confirmed) {
        this.cells = OrderCells.of(dwell, confirmed);
        this.places = cells.stream()
                .mapToInt(cell -> decimals(cell.amplitude()))
                .filter(decimals -> decimals <= MOST_DECIMALS_ALIGNED)
                .max()
                .orElse(0);
    }

    /**
     * @param confirmed whether the speed is: without it nothing is called detected or not
     */
    static List<String> lines(DwellOrders dwell, SignalUnit unit, boolean confirmed) {
        return new DwellTable(dwell, confirmed).lines(unit);
    }

    private List<String> lines(SignalUnit unit) {
        List<OrderCells> rows = new ArrayList<>();
        rows.add(new OrderCells("order", "Hz", unit.display() + " peak", "± 95 %", ""));
        rows.addAll(cells);
        TextTable table = new TextTable("lrrr");
        rows.forEach(row -> table.row(row.name(), row.hz(), aligned(row.amplitude()), aligned(row.range())));
        List<String> written = table.lines();
        int width = written.stream().mapToInt(DwellTable::columns).max().orElse(0);
        List<String> lines = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            String remark = rows.get(i).remark();
            String start = written.get(i);
            if (remark.isEmpty()) {
                lines.add(start);
                continue;
            }
            // Where there is no amplitude the remark takes its place.
            int column = rows.get(i).amplitude().isEmpty() ? columns(start) : width;
            String first = start + " ".repeat(column - columns(start) + 2);
            lines.addAll(LineWrapper.lines(first, " ".repeat(column + 2), remark));
        }
        return lines;
    }

    private static int columns(String line) {
        return line.codePointCount(0, line.length());
    }

    /** Figures under figures; a word or a heading stays as it is. */
    private String aligned(String cell) {
        return cell.isEmpty() || !Character.isDigit(cell.charAt(cell.length() - 1))
                ? cell
                : AmplitudeText.aligned(cell, places);
    }

    private static int decimals(String amplitude) {
        int point = amplitude.indexOf('.');
        return point < 0 ? 0 : amplitude.length() - point - 1;
    }
}
