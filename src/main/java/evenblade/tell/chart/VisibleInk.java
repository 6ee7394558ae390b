package evenblade.tell.chart;

import de.erichseifert.vectorgraphics2d.VectorGraphics2D;
import java.awt.Shape;

/** A surface for SVG without what XChart fills with a clear colour: some readers of SVG show it black. */
final class VisibleInk extends VectorGraphics2D {
    @Override
    public void fill(Shape shape) {
        if (getColor().getAlpha() > 0) {
            super.fill(shape);
        }
    }

    @Override
    public void draw(Shape shape) {
        if (getColor().getAlpha() > 0) {
            super.draw(shape);
        }
    }
}
