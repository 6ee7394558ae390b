package evenblade.face.desktop;

import java.awt.Component;
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

    /** Gives every column the room that its widest cell and its heading need; all of it together in pixels. */
    static int fit(JTable table) {
        int all = 0;
        for (int column = 0; column < table.getColumnCount(); column++) {
            table.getColumnModel().getColumn(column).setCellRenderer(new Cell());
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

    /** Numbers begin with a digit or a sign. */
    private static final class Cell extends DefaultTableCellRenderer {
        @Override
        public Component getTableCellRendererComponent(
                JTable table, Object value, boolean selected, boolean focused, int row, int column) {
            JComponent cell =
                    (JComponent) super.getTableCellRendererComponent(table, value, selected, focused, row, column);
            String text = String.valueOf(value);
            setHorizontalAlignment(
                    text.matches("(below )?[+−]?[0-9.]+( ± [0-9.]+)?( Hz| rpm| %)?")
                            ? SwingConstants.RIGHT
                            : SwingConstants.LEFT);
            cell.setToolTipText(text.isEmpty() ? null : text);
            return cell;
        }
    }
}
