package evenblade.face.desktop;

import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.OrderTable;
import evenblade.tell.document.FigureFormat;
import java.util.List;
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
        for (OrderLine line : lines) {
            String same = lines.stream()
                    .filter(other -> other != line && OrderTable.coincide(other, line))
                    .map(OrderLine::name)
                    .findFirst()
                    .map(name -> "one line with " + name)
                    .orElse("");
            model.addRow(new Object[] {line.name(), FigureFormat.fixed(line.propellerOrder(), 3), same});
        }
        setModel(model);
        TableLook.fit(this);
    }

    private static DefaultTableModel model() {
        return new DefaultTableModel(new Object[] {"line", "× propeller", "to know"}, 0) {
            @Override
            public boolean isCellEditable(int row, int column) {
                return false;
            }
        };
    }
}
