package evenblade.tell.chart;

import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** A picture with the cursors that stand in it, and what they read in its caption: for paper, as it was seen. */
public final class SeenPicture implements Picture {
    private final Picture picture;
    private final List<Spot> cursors;

    public SeenPicture(Picture picture, List<Spot> cursors) {
        this.picture = picture;
        this.cursors = List.copyOf(cursors);
    }

    @Override
    public String title() {
        return picture.title();
    }

    @Override
    public Caption caption() {
        List<String> parts = new ArrayList<>(picture.caption().parts());
        LaidOut.words(cursors).forEach(line -> parts.add("cursor " + line));
        return new Caption(parts);
    }

    @Override
    public List<KeyEntry> key() {
        return picture.key();
    }

    @Override
    public LaidOut paintBody(Pen pen, Rectangle2D area) {
        LaidOut layout = picture.paintBody(pen, area);
        layout.paint(pen, cursors);
        return layout;
    }
}
