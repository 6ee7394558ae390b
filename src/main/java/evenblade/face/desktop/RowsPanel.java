package evenblade.face.desktop;

import java.awt.Component;
import java.awt.Dimension;
import java.awt.Insets;
import java.util.ArrayList;
import java.util.List;
import javax.swing.BorderFactory;
import javax.swing.JPanel;
import javax.swing.SwingUtilities;

/** Things beside each other, which go on in a next row where the room ends, so that none leaves the window. */
class RowsPanel extends JPanel {
    private static final int GAP = 6; // pixels between two things

    /** With so much room around, in pixels. */
    RowsPanel(int top, int left, int bottom, int right) {
        super(null);
        setBorder(BorderFactory.createEmptyBorder(top, left, bottom, right));
    }

    private record Place(Component what, int x, int y, int width, int height) {}

    private List<Place> places(int width) {
        Insets around = getInsets();
        int room = Math.max(1, width - around.left - around.right);
        List<Place> places = new ArrayList<>();
        List<Place> row = new ArrayList<>();
        int x = 0;
        int y = around.top;
        for (Component each : getComponents()) {
            if (!each.isVisible()) {
                continue;
            }
            Dimension wish = each.getPreferredSize();
            int wide = Math.min(room, wish.width);
            if (x > 0 && x + wide > room) {
                y += place(row, places) + GAP;
                row.clear();
                x = 0;
            }
            row.add(new Place(each, around.left + x, y, wide, wish.height));
            x += wide + GAP;
        }
        place(row, places);
        return places;
    }

    /** Puts a row down, everything in it at the height of its middle; says how high it is. */
    private static int place(List<Place> row, List<Place> into) {
        int height = row.stream().mapToInt(Place::height).max().orElse(0);
        row.forEach(
                p -> into.add(new Place(p.what(), p.x(), p.y() + (height - p.height()) / 2, p.width(), p.height())));
        return height;
    }

    @Override
    public void doLayout() {
        places(getWidth()).forEach(p -> p.what().setBounds(p.x(), p.y(), p.width(), p.height()));
    }

    @Override
    public Dimension getPreferredSize() {
        Insets around = getInsets();
        int width = getWidth() > 0 ? getWidth() : Integer.MAX_VALUE / 2;
        List<Place> places = places(width);
        int right = places.stream().mapToInt(p -> p.x() + p.width()).max().orElse(around.left);
        int foot = places.stream().mapToInt(p -> p.y() + p.height()).max().orElse(around.top);
        return new Dimension(right + around.right, foot + around.bottom);
    }

    @Override
    public Dimension getMinimumSize() {
        return new Dimension(1, getPreferredSize().height);
    }

    @Override
    public void setBounds(int x, int y, int width, int height) {
        boolean other = width != getWidth();
        super.setBounds(x, y, width, height);
        if (other && getPreferredSize().height != height) {
            SwingUtilities.invokeLater(this::revalidate);
        }
    }
}
