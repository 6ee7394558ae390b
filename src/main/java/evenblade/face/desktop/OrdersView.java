package evenblade.face.desktop;

import evenblade.base.units.SignalUnit;
import evenblade.measure.orders.DwellOrders;
import evenblade.tell.document.LineCells;
import java.util.List;
import java.util.Locale;
import javax.swing.JTable;
import javax.swing.table.DefaultTableModel;

/** The orders of one dwell, in the figures that the command line writes. */
final class OrdersView extends JTable {
    private static final int[] USUAL_WIDTHS = {150, 90, 140, 100, 340}; // the longest usual text of each column

    private final transient Settings settings;

    OrdersView(Settings settings) {
        this.settings = settings;
        setName("orders");
        setRowHeight((int) (1.9 * Look.em()));
        getTableHeader().setReorderingAllowed(false);
        getAccessibleContext().setAccessibleName("Orders of the dwell");
        setFillsViewportHeight(true);
    }

    void show(DwellOrders dwell, SignalUnit unit, boolean confirmed) {
        List<LineCells> cells = LineCells.of(dwell, confirmed);
        DefaultTableModel model =
                new DefaultTableModel(new Object[] {"order", "Hz", unit.display() + " peak", "± 95 %", "to know"}, 0) {
                    @Override
                    public boolean isCellEditable(int row, int column) {
                        return false;
                    }
                };
        cells.forEach(cell ->
                model.addRow(new Object[] {cell.name(), cell.hz(), cell.amplitude(), cell.range(), cell.remark()}));
        rememberWidths();
        setModel(model);
        TableLook.fit(this);
        for (int i = 0; i < USUAL_WIDTHS.length; i++) {
            getColumnModel().getColumn(i).setPreferredWidth(settings.number(key(i), USUAL_WIDTHS[i]));
        }
    }

    /** Keeps the widths that the user gave the columns. */
    void rememberWidths() {
        for (int i = 0; i < getColumnCount(); i++) {
            settings.keep(key(i), getColumnModel().getColumn(i).getWidth());
        }
    }

    private static String key(int column) {
        return String.format(Locale.ROOT, "orders.column.%d", column);
    }

    @Override
    public void removeNotify() {
        rememberWidths();
        super.removeNotify();
    }
}
