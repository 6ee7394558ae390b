package evenblade.face.desktop;

import evenblade.machine.installation.OrderLine;
import evenblade.tell.document.FigureFormat;
import evenblade.tell.document.OnePlace;
import java.util.List;
import java.util.function.Function;
import javax.swing.JTable;
import javax.swing.table.DefaultTableModel;

/** Where every line of an installation lies, as multiples of propeller and crank speed. */
final class OrderLinesTable extends JTable {
    OrderLinesTable() {
        super(model());
        setName("order lines");
        setRowHeight((int) (1.7 * Look.em()));
        setFocusable(false);
        getTableHeader().setReorderingAllowed(false);
        setFillsViewportHeight(true);
    }

    void show(List<OrderLine> lines) {
        DefaultTableModel model = model();
        for (OnePlace<OrderLine> place : OnePlace.of(lines, Function.identity())) {
            model.addRow(
                    new Object[] {place.name(), FigureFormat.fixed(place.first().propellerOrder(), 3)});
        }
        setModel(model);
        TableLook.fitFigures(this);
    }

    private static DefaultTableModel model() {
        return new DefaultTableModel(new Object[] {"line", "× propeller"}, 0) {
            @Override
            public boolean isCellEditable(int row, int column) {
                return false;
            }
        };
    }
}
