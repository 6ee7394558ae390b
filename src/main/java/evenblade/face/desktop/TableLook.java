package evenblade.face.desktop;

import java.awt.Component;
import java.util.function.IntPredicate;
import javax.swing.JComponent;
import javax.swing.JTable;
import javax.swing.SwingConstants;
import javax.swing.table.DefaultTableCellRenderer;

/** How tables of figures look: columns as wide as what stands in them, figures never cut, numbers to the right, whole words in the tip. */
final class TableLook {
    /** As wide as a figure with its range or a word or two; wider cells are sentences. In widths of a letter; ours. */
    private static final int MOST_OF_A_FIGURE = 12;

    private static final int ROUNDING_PX = 2; // of letters' widths

    private TableLook() {}

    /** Fits a table of names in its first column and figures in all others. */
    static int fitFigures(JTable table) {
        return fit(table, column -> column > 0);
    }

    /**
     * Gives every column the room that its widest cell and its heading need.
     *
     * @param right the columns, from 0, whose cells are set to the right
     * @return the width of all columns together, in pixels
     */
    static int fit(JTable table, IntPredicate right) {
        int all = 0;
        for (int column = 0; column < table.getColumnCount(); column++) {
            table.getColumnModel().getColumn(column).setCellRenderer(new Cell(right.test(column)));
            Component heading = table.getTableHeader()
                    .getDefaultRenderer()
                    .getTableCellRendererComponent(table, table.getColumnName(column), false, false, -1, column);
            int widest = heading.getPreferredSize().width;
            for (int row = 0; row < table.getRowCount(); row++) {
                widest = Math.max(
                        widest,
                        table.prepareRenderer(table.getCellRenderer(row, column), row, column)
                                .getPreferredSize()
                                .width);
            }
            int wanted = widest + Look.em();
            table.getColumnModel().getColumn(column).setPreferredWidth(wanted);
            if (column > 0 && widest <= MOST_OF_A_FIGURE * Look.em()) {
                // A name can be shortened; a figure without its end is another figure.
                table.getColumnModel().getColumn(column).setMinWidth(widest + ROUNDING_PX);
            }
            all += wanted;
        }
        return all;
    }

    private static final class Cell extends DefaultTableCellRenderer {
        Cell(boolean right) {
            setHorizontalAlignment(right ? SwingConstants.RIGHT : SwingConstants.LEFT);
        }

        @Override
        public Component getTableCellRendererComponent(
                JTable table, Object value, boolean selected, boolean focused, int row, int column) {
            JComponent cell =
                    (JComponent) super.getTableCellRendererComponent(table, value, selected, focused, row, column);
            String text = String.valueOf(value);
            cell.setToolTipText(text.isEmpty() ? null : text);
            return cell;
        }
    }
}
