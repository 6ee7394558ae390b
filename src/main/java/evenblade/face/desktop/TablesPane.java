package evenblade.face.desktop;

import evenblade.tell.document.Block;
import evenblade.tell.document.Document;
import java.util.List;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTable;
import javax.swing.RowSorter;
import javax.swing.table.DefaultTableModel;
import javax.swing.table.TableRowSorter;
import net.miginfocom.swing.MigLayout;

/** The tables of a document as tables: a click on a heading sorts, Ctrl+C copies the rows that are marked. */
final class TablesPane extends JScrollPane {
    private final JPanel tables = new WidePanel(new MigLayout("insets 4, wrap 1, gapy 4", "[grow,fill]")) {
        /** Where figures need more room than there is, they are reached by moving sideways. */
        @Override
        public boolean getScrollableTracksViewportWidth() {
            return getParent() == null || getParent().getWidth() >= getMinimumSize().width;
        }
    };

    TablesPane(String name) {
        setName(name);
        setViewportView(tables);
        getVerticalScrollBar().setUnitIncrement(Look.em());
    }

    void show(Document document) {
        tables.removeAll();
        int number = 0;
        String heading = "";
        for (Block block : document.blocks()) {
            if (block instanceof Block.Heading titled) {
                heading = titled.text();
            }
            if (block instanceof Block.Table table && !table.rows().isEmpty()) {
                JLabel title = Look.strong(table.title().isEmpty() ? heading : table.title());
                title.setToolTipText(title.getText());
                tables.add(title, "wmin 0, gaptop 6");
                JTable made = table(table);
                made.setName(getName() + " " + ++number);
                tables.add(made.getTableHeader(), "gapbottom 0");
                tables.add(made);
            }
        }
        tables.revalidate();
        tables.repaint();
    }

    private static JTable table(Block.Table from) {
        DefaultTableModel model =
                new DefaultTableModel(
                        from.columns().stream().map(Block.Column::heading).toArray(), 0) {
                    @Override
                    public boolean isCellEditable(int row, int column) {
                        return false;
                    }
                };
        for (Block.Row row : from.rows()) {
            Object[] cells = new Object[from.columns().size()];
            java.util.Arrays.fill(cells, "");
            List<String> words = row.cells();
            for (int i = 0; i < Math.min(cells.length, words.size()); i++) {
                cells[i] = words.get(i);
            }
            model.addRow(cells);
        }
        JTable table = new JTable(model);
        table.setRowHeight((int) (1.6 * Look.em()));
        table.setRowSorter(sorter(model));
        table.getTableHeader().setReorderingAllowed(false);
        TableLook.fit(table, column -> from.columns().get(column).align() != Block.Align.LEFT);
        return table;
    }

    /** Figures by their size, whatever stands behind them; what isn't a figure after them, as words. */
    private static RowSorter<DefaultTableModel> sorter(DefaultTableModel model) {
        TableRowSorter<DefaultTableModel> sorter = new TableRowSorter<>(model);
        for (int column = 0; column < model.getColumnCount(); column++) {
            sorter.setComparator(
                    column,
                    java.util.Comparator.comparingDouble(TablesPane::size).thenComparing(Object::toString));
        }
        return sorter;
    }

    private static double size(Object cell) {
        String text = String.valueOf(cell).replace('−', '-').strip();
        java.util.regex.Matcher number =
                java.util.regex.Pattern.compile("[+-]?[0-9]+(\\.[0-9]+)?").matcher(text);
        return number.lookingAt() ? Double.parseDouble(number.group()) : Double.POSITIVE_INFINITY;
    }
}
