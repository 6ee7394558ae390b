package evenblade.face.desktop;

import evenblade.tell.chart.Spot;
import evenblade.tell.chart.Spot.What;
import java.awt.Dimension;
import java.util.List;
import java.util.function.Consumer;
import javax.swing.JTable;
import javax.swing.table.DefaultTableModel;

/** The highest peaks of what is seen; a click on one puts the cursor there. Ctrl+C copies what is marked. */
final class PeakTable extends JTable {
    private static final List<What> WHAT =
            List.of(What.FREQUENCY, What.AMPLITUDE, What.PROPELLER_ORDER, What.CRANK_ORDER);

    private transient List<Spot> peaks = List.of();

    PeakTable(Consumer<Spot> chosen) {
        setName("peaks");
        setRowHeight((int) (1.6 * Look.em()));
        setFillsViewportHeight(true);
        getTableHeader().setReorderingAllowed(false);
        getAccessibleContext().setAccessibleName("The highest peaks");
        getSelectionModel().addListSelectionListener(e -> {
            if (!e.getValueIsAdjusting() && getSelectedRow() >= 0 && getSelectedRow() < peaks.size()) {
                chosen.accept(peaks.get(getSelectedRow()));
            }
        });
    }

    void show(List<Spot> found) {
        if (found.equals(peaks)) {
            return;
        }
        peaks = found;
        DefaultTableModel model =
                new DefaultTableModel(new Object[] {"line", "Hz", "amplitude", "× prop.", "× crank"}, 0) {
                    @Override
                    public boolean isCellEditable(int row, int column) {
                        return false;
                    }
                };
        for (Spot spot : found) {
            Object[] row = new Object[WHAT.size() + 1];
            row[0] = spot.name();
            for (int i = 0; i < WHAT.size(); i++) {
                row[i + 1] = spot.reading(WHAT.get(i)).map(Spot.Reading::number).orElse("");
            }
            model.addRow(row);
        }
        setModel(model);
        setPreferredScrollableViewportSize(new Dimension(TableLook.fitFigures(this), 10));
    }
}
